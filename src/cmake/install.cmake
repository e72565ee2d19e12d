# `cmake --install build` and the Debian package (`cpack --config build/CPackConfig.cmake`): program,
# man page, bash completion, documents, the demo job as an example, licence. Nothing else is read at
# run time: styles and scripts of the pages are in the program.
include(GNUInstallDirs)
set(CMAKE_SKIP_INSTALL_ALL_DEPENDENCY TRUE) # installing needs the program, not the tests

function(compressed from to)
  execute_process(COMMAND gzip -9nc ${from} OUTPUT_FILE ${to} COMMAND_ERROR_IS_FATAL ANY)
endfunction()

set(made ${CMAKE_BINARY_DIR}/made/install)
configure_file(docs/squaredig.1.in ${made}/squaredig.1 @ONLY)
compressed(${made}/squaredig.1 ${made}/squaredig.1.gz)
configure_file(src/cmake/changelog.in ${made}/changelog @ONLY)
compressed(${made}/changelog ${made}/changelog.gz)

install(TARGETS squaredig RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(FILES ${made}/squaredig.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
install(FILES src/cmake/squaredig.bash RENAME squaredig
  DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions)
install(FILES src/cmake/copyright ${made}/changelog.gz DESTINATION ${CMAKE_INSTALL_DOCDIR})
install(DIRECTORY docs/ DESTINATION ${CMAKE_INSTALL_DOCDIR} FILES_MATCHING PATTERN *.md PATTERN LICENSE.txt)
install(DIRECTORY demo/alderbrook DESTINATION ${CMAKE_INSTALL_DOCDIR}/examples PATTERN out EXCLUDE)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME squaredig)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_PACKAGE_DIRECTORY ${CMAKE_BINARY_DIR})
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_MAINTAINER "squaredig maintainers <maintainers@squaredig.example>")
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON) # the libraries; what is not linked is named here
set(CPACK_DEBIAN_PACKAGE_DEPENDS "fonts-dejavu-core, proj-data")
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
  "pegs, cut and base check of the pit of a buried modular tank
Takes a surveyor's points and one job file and tells where the pegs go, how
much is dug in every grid cell, and whether the dug base is good, each with
its uncertainty. Reads and writes open formats, and works offline.")
include(CPack)
