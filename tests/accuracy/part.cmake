# docs/accuracy.md is what accuracy_table prints. To renew it: build/accuracy_table > docs/accuracy.md
add_executable(accuracy_table accuracy/table.cpp)
target_link_libraries(accuracy_table PRIVATE fill dig design squaredig_warnings)
target_include_directories(accuracy_table PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
add_test(NAME accuracy.table COMMAND ${CMAKE_COMMAND} -E env bash -c
  "diff <($<TARGET_FILE:accuracy_table>) ${PROJECT_SOURCE_DIR}/docs/accuracy.md")
