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
  { package: 'admesh', proof: '/usr/bin/admesh', why: 'says whether a solid is watertight' },
];
