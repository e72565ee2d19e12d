# What is installed: the package and what is in it; the man page and the completion beside the help.
# On a bare Debian, with root and network, and only when asked: tests/package/bare_debian.sh
find_package(Python3 REQUIRED COMPONENTS Interpreter)
if(TARGET squaredig)
  add_test(NAME package.deb COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/package/deb.py
    ${CMAKE_BINARY_DIR} ${PROJECT_SOURCE_DIR})
  set_tests_properties(package.deb PROPERTIES SKIP_RETURN_CODE 77)
  add_test(NAME package.words COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/package/words.py
    $<TARGET_FILE:squaredig> ${PROJECT_SOURCE_DIR} ${CMAKE_BINARY_DIR})
endif()
