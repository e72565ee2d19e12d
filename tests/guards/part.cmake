# What must not happen, whatever stands in a file: labels that do something, paths that are followed; and
# every real survey file, with what is known of it.
find_package(Python3 REQUIRED COMPONENTS Interpreter)
if(TARGET squaredig)
  add_test(NAME guards.labels
    COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/guards/labels.py
      $<TARGET_FILE:squaredig> ${PROJECT_SOURCE_DIR})
  foreach(script neighbours real_files)
    add_test(NAME guards.${script}
      COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/guards/${script}.py
        $<TARGET_FILE:read_file> ${PROJECT_SOURCE_DIR})
  endforeach()
endif()
