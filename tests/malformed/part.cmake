# Public corpora of malformed files, where they stand beside the project.
find_package(Python3 REQUIRED COMPONENTS Interpreter)
if(TARGET app)
  add_executable(read_file ${CMAKE_CURRENT_LIST_DIR}/read_file.cpp)
  target_link_libraries(read_file PRIVATE app squaredig_warnings)
  add_test(NAME malformed
    COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_LIST_DIR}/malformed.py $<TARGET_FILE:read_file> ${PROJECT_SOURCE_DIR})
endif()
