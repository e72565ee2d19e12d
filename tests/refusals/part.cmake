# Broken inputs through the program: each gets its exact lines, and nothing is written.
if(TARGET squaredig)
  add_test(NAME refusals
    COMMAND ${CMAKE_CURRENT_SOURCE_DIR}/refusals/run.sh $<TARGET_FILE:squaredig>)
endif()
