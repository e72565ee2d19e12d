# Tables that a surveyor can read and add to, one runner each; what is common to all is in table.h. A
# runner ends with 2 where it meets words it does not know.
add_library(table STATIC ${CMAKE_CURRENT_LIST_DIR}/table.cpp)
target_link_libraries(table PUBLIC quantity PRIVATE squaredig_warnings)
target_include_directories(table PUBLIC ${CMAKE_CURRENT_SOURCE_DIR})
foreach(stage ground pegs dig base fill field record)
  add_executable(table_${stage} ${CMAKE_CURRENT_LIST_DIR}/${stage}_table.cpp)
  target_link_libraries(table_${stage} PRIVATE table ${stage} squaredig_warnings)
  add_test(NAME tables.${stage}
    COMMAND table_${stage} ${CMAKE_CURRENT_LIST_DIR}/${stage}.table)
endforeach()
add_test(NAME tables.base_every_check
  COMMAND table_base ${CMAKE_CURRENT_LIST_DIR}/base.table every_check)
foreach(stage base dig)
  add_test(NAME tables.${stage}_unknown_words
    COMMAND table_${stage} ${CMAKE_CURRENT_LIST_DIR}/unknown.table)
  set_tests_properties(tables.${stage}_unknown_words PROPERTIES PASS_REGULAR_EXPRESSION
    "not known: level height")
endforeach()
find_package(Python3 REQUIRED COMPONENTS Interpreter)
add_test(NAME docs.examples COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_LIST_DIR}/examples.py
  ${CMAKE_BINARY_DIR} ${PROJECT_SOURCE_DIR})
