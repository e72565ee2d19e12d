# The house rules that a script can see, one test each.
find_package(Python3 REQUIRED COMPONENTS Interpreter)
foreach(rule contracts laws doubles one_voice one_definition words lengths functions top_level links
    pages unused one_word chain)
  add_test(NAME house.${rule}
    COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/house/check.py ${rule} ${PROJECT_SOURCE_DIR})
endforeach()
add_test(NAME house.spelling
  COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/house/spelling.py ${PROJECT_SOURCE_DIR})
set_tests_properties(house.spelling PROPERTIES SKIP_RETURN_CODE 77)
