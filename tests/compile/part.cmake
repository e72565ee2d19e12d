# Lines that must not compile, and lines that must.
find_package(Python3 REQUIRED COMPONENTS Interpreter)
add_test(NAME compile.refused
  COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/compile/check.py ${CMAKE_CXX_COMPILER} ${PROJECT_SOURCE_DIR})
