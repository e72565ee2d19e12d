# What the program writes, given back to it as if it had been measured, or read by another program.
find_package(Python3 REQUIRED COMPONENTS Interpreter)
if(TARGET squaredig)
  foreach(script pegs cut_tif fill record formats standards)
    add_test(NAME round_trips.${script}
      COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/round_trips/${script}.py
        $<TARGET_FILE:squaredig> ${PROJECT_SOURCE_DIR})
  endforeach()
endif()
