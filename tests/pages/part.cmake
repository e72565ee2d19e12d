# The pages in a real browser, and the sheets through the tools that read PDF.
find_program(SQUAREDIG_CHROMIUM NAMES chromium chromium-browser)
find_program(SQUAREDIG_NODE node)
if(TARGET squaredig)
  add_test(NAME pages.sheets
    COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/pages/sheets.py
      $<TARGET_FILE:squaredig> ${PROJECT_SOURCE_DIR})
  add_test(NAME pages.install
    COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/pages/install.py
      ${CMAKE_CURRENT_SOURCE_DIR}/pages ${CMAKE_BINARY_DIR}/pages)
  set_tests_properties(pages.install PROPERTIES FIXTURES_SETUP pages_modules)
  foreach(suite every dig labels large)
    add_test(NAME pages.${suite}
      COMMAND ${SQUAREDIG_NODE} ${CMAKE_CURRENT_SOURCE_DIR}/pages/browser.mjs ${suite}
        $<TARGET_FILE:squaredig> ${PROJECT_SOURCE_DIR} ${CMAKE_BINARY_DIR}/pages ${SQUAREDIG_CHROMIUM})
    set_tests_properties(pages.${suite} PROPERTIES FIXTURES_REQUIRED pages_modules TIMEOUT 600)
  endforeach()
endif()
