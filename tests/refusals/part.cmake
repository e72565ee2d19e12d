# Broken inputs through the program: each gets its exact lines, and nothing is written.
if(TARGET squaredig)
  add_test(NAME refusals
    COMMAND ${CMAKE_CURRENT_SOURCE_DIR}/refusals/run.sh $<TARGET_FILE:squaredig>)
endif()
find_package(Python3 REQUIRED COMPONENTS Interpreter)
add_test(NAME refusals.messages COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/refusals/messages.py
  ${PROJECT_SOURCE_DIR})
