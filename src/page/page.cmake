# The target `page`: coldgap.html in the build folder, by the build of its own in
# CMakeLists.txt beside this file.  What it wants is named in DEVELOPERS.md.
find_program(CG_NODE NAMES node nodejs REQUIRED)
set(CG_PAGE_FILE ${CMAKE_BINARY_DIR}/coldgap.html)
set(folder ${CMAKE_BINARY_DIR}/page)
add_custom_target(page ALL
    COMMAND sh ${CMAKE_SOURCE_DIR}/src/page/sources.sh ${folder}/sources
    COMMAND ${CMAKE_COMMAND} -S ${CMAKE_SOURCE_DIR}/src/page -B ${folder}
            -DCMAKE_TOOLCHAIN_FILE=${CMAKE_SOURCE_DIR}/src/page/wasi.cmake
            -DCMAKE_C_COMPILER_LAUNCHER=${CMAKE_C_COMPILER_LAUNCHER}
            -DCG_SOURCES=${folder}/sources -DCG_VERSION=${PROJECT_VERSION}
    COMMAND ${CMAKE_COMMAND} --build ${folder} --parallel 2
    COMMAND ${CG_NODE} ${CMAKE_SOURCE_DIR}/src/page/assemble.js
            ${CMAKE_SOURCE_DIR} ${folder}/coldgap.wasm
            ${folder}/sources/versions ${CG_PAGE_FILE}
    VERBATIM)
install(FILES ${CG_PAGE_FILE} DESTINATION ${CMAKE_INSTALL_DATADIR}/coldgap)
