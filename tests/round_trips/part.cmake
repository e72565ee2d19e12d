# What the program writes, given back to it as if it had been measured.
find_package(Python3 REQUIRED COMPONENTS Interpreter)
if(TARGET squaredig)
  add_test(NAME round_trips.pegs
    COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/round_trips/pegs.py
      $<TARGET_FILE:squaredig> ${PROJECT_SOURCE_DIR})
  add_test(NAME round_trips.cut_tif
    COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/round_trips/cut_tif.py
      $<TARGET_FILE:squaredig> ${PROJECT_SOURCE_DIR})
endif()
