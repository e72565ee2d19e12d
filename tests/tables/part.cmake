# Tables that a surveyor can read and add to, one runner each. A runner ends with 2 where it meets
# words it does not know.
if(TARGET base)
  add_executable(table_base ${CMAKE_CURRENT_LIST_DIR}/base_table.cpp)
  target_link_libraries(table_base PRIVATE base squaredig_warnings)
  target_include_directories(table_base PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
  add_test(NAME tables.base COMMAND table_base ${CMAKE_CURRENT_LIST_DIR}/base.table)
  add_test(NAME tables.base_unknown_words
    COMMAND table_base ${CMAKE_CURRENT_LIST_DIR}/unknown.table)
  set_tests_properties(tables.base_unknown_words PROPERTIES PASS_REGULAR_EXPRESSION
    "not known: level height")
endif()
