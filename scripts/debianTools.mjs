/** Debian packages the tests need, each with a file that proves it is there, and why. */
export const debianTools = [
  { package: 'gcc-avr', proof: '/usr/bin/avr-gcc', why: 'compiles the generated program' },
  {
    package: 'binutils-avr',
    proof: '/usr/bin/avr-objcopy',
    why: 'turns it into what the emulated chip loads',
  },
  { package: 'avr-libc', proof: '/usr/lib/avr/include/avr/io.h', why: 'the C library of that chip' },
  {
    package: 'arduino-core-avr',
    proof: '/usr/share/arduino/hardware/arduino/avr/cores/arduino/Arduino.h',
    why: 'the core that the program is built on',
  },
  { package: 'openscad', proof: '/usr/bin/openscad', why: 'opens solids as a maker would' },
  { package: 'admesh', proof: '/usr/bin/admesh', why: 'says whether a solid is watertight' },
  {
    package: 'python3-ezdxf',
    proof: '/usr/lib/python3/dist-packages/ezdxf/__init__.py',
    why: 'opens and audits the drawings for a cutter',
  },
  {
    package: 'poppler-utils',
    proof: '/usr/bin/pdftoppm',
    why: 'shows the sheets as a printer would, at a known scale',
  },
  { package: 'qpdf', proof: '/usr/bin/qpdf', why: 'says whether a sheet is a sound PDF' },
  {
    package: 'lib3mf-dev',
    proof: '/usr/include/lib3mf/Model/COM/NMR_DLLInterfaces.h',
    why: 'reads 3MF files as strictly as the format asks',
  },
  { package: 'g++', proof: '/usr/bin/g++', why: 'builds the few lines that call that reader' },
  { package: 'socat', proof: '/usr/bin/socat', why: 'stands for a serial cable' },
  { package: 'mosquitto', proof: '/usr/sbin/mosquitto', why: 'is the broker that lines come through' },
  {
    package: 'postgresql-15',
    proof: '/usr/lib/postgresql/15/bin/initdb',
    why: 'is the server that keeps many stations',
  },
  {
    package: 'chromium',
    proof: '/usr/bin/chromium',
    why: 'opens the workbench as a maker would',
  },
];
