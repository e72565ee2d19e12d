# Golden runs through the real program, one test per command.
find_package(Python3 REQUIRED COMPONENTS Interpreter)
if(TARGET squaredig)
  file(GLOB cases CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/commands/*/*/case)
  set(stages)
  foreach(case ${cases})
    cmake_path(GET case PARENT_PATH folder)
    cmake_path(GET folder PARENT_PATH folder)
    cmake_path(GET folder FILENAME stage)
    list(APPEND stages ${stage})
  endforeach()
  list(REMOVE_DUPLICATES stages)
  foreach(stage ${stages})
    add_test(NAME commands.${stage}
      COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/commands/run_cases.py
        $<TARGET_FILE:squaredig> ${PROJECT_SOURCE_DIR} ${stage})
  endforeach()
  foreach(script determinism killed storage fields field_example)
    add_test(NAME commands.${script}
      COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/commands/${script}.py
        $<TARGET_FILE:squaredig> ${PROJECT_SOURCE_DIR})
  endforeach()
  add_test(NAME docs.commands
    COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/commands/readme.py
      $<TARGET_FILE:squaredig> ${PROJECT_SOURCE_DIR})
endif()
