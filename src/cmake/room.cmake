# room(NAME SEES rooms... VALUES rooms... USES libraries...)
# One static library per room with the house's warnings and arithmetic, linked to nothing but what
# is named, and a test that fails on any include of a room or library that is not named.

find_package(PkgConfig REQUIRED)
find_package(Threads REQUIRED)

# The arithmetic is the same everywhere: no fused multiply-add by accident.
add_library(squaredig_house INTERFACE)
target_compile_features(squaredig_house INTERFACE cxx_std_20)
target_include_directories(squaredig_house INTERFACE ${PROJECT_SOURCE_DIR}/src)
target_compile_options(squaredig_house INTERFACE -ffp-contract=off)

add_library(squaredig_warnings INTERFACE)
target_compile_options(squaredig_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wsign-conversion -Wshadow -Wdouble-promotion
  # false alarms of g++ 12: temporaries of throw expressions, and "text" + std::string
  -Wno-maybe-uninitialized -Wno-restrict
  -Wold-style-cast -Wnon-virtual-dtor -Woverloaded-virtual
  $<$<BOOL:${SQUAREDIG_DEVELOPER}>:-Werror>)

# Foreign libraries by the short name used in USES. Each is added once, when first named.
function(squaredig_library name)
  if(TARGET lib_${name})
    return()
  endif()
  add_library(lib_${name} INTERFACE)
  if(name STREQUAL "CGAL")
    find_package(CGAL REQUIRED)
    get_target_property(dirs CGAL::CGAL INTERFACE_INCLUDE_DIRECTORIES)
    target_link_libraries(lib_CGAL INTERFACE CGAL::CGAL)
    target_compile_definitions(lib_CGAL INTERFACE CGAL_NDEBUG)
    # CGAL's interval arithmetic sets the rounding mode; the compiler must not fold across it.
    target_compile_options(lib_CGAL INTERFACE -frounding-math)
  elseif(name STREQUAL "PROJ")
    pkg_check_modules(PROJ REQUIRED IMPORTED_TARGET proj)
    target_link_libraries(lib_PROJ INTERFACE PkgConfig::PROJ)
  elseif(name STREQUAL "GDAL")
    pkg_check_modules(GDAL REQUIRED IMPORTED_TARGET gdal)
    target_link_libraries(lib_GDAL INTERFACE PkgConfig::GDAL)
  elseif(name STREQUAL "LIBXML2")
    pkg_check_modules(LIBXML2 REQUIRED IMPORTED_TARGET libxml-2.0)
    target_link_libraries(lib_LIBXML2 INTERFACE PkgConfig::LIBXML2)
  elseif(name STREQUAL "OPENSSL")
    pkg_check_modules(OPENSSL REQUIRED IMPORTED_TARGET libcrypto)
    target_link_libraries(lib_OPENSSL INTERFACE PkgConfig::OPENSSL)
  elseif(name STREQUAL "EIGEN")
    find_package(Eigen3 REQUIRED NO_MODULE)
    target_link_libraries(lib_EIGEN INTERFACE Eigen3::Eigen)
  elseif(name STREQUAL "CAIRO")
    pkg_check_modules(CAIRO REQUIRED IMPORTED_TARGET cairo pangocairo)
    target_link_libraries(lib_CAIRO INTERFACE PkgConfig::CAIRO)
  elseif(name STREQUAL "THREADS")
    target_link_libraries(lib_THREADS INTERFACE Threads::Threads)
  elseif(NOT name MATCHES "^(NLOHMANN|TOMLPP|CLI11)$") # these are headers alone
    message(FATAL_ERROR "room: no library is known as ${name}")
  endif()
endfunction()

function(room name)
  cmake_parse_arguments(ROOM "" "" "SEES;VALUES;USES" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/${name}/*.cpp)
  if(NOT sources)
    message(FATAL_ERROR "room ${name} has no .cpp file")
  endif()
  add_library(${name} STATIC ${sources})
  target_link_libraries(${name} PUBLIC squaredig_house PRIVATE squaredig_warnings)
  foreach(seen ${ROOM_SEES})
    target_link_libraries(${name} PUBLIC ${seen})
  endforeach()
  foreach(library ${ROOM_USES})
    squaredig_library(${library})
    target_link_libraries(${name} PRIVATE lib_${library})
  endforeach()
  add_test(NAME rooms.${name}
    COMMAND ${CMAKE_COMMAND} -DROOM=${name} "-DSEES=${ROOM_SEES}" "-DVALUES=${ROOM_VALUES}"
      "-DUSES=${ROOM_USES}" -DSRC=${PROJECT_SOURCE_DIR}/src
      -P ${PROJECT_SOURCE_DIR}/src/cmake/check_includes.cmake)
endfunction()
