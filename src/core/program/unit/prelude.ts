/** What a compiler for another chip needs so that tables in program memory read like any others. */
export const preludeText = `#pragma once

#include <stdint.h>

#if defined(__AVR__)
#include <avr/pgmspace.h>
#else
#define PROGMEM
inline uint8_t pgm_read_byte(const uint8_t *at) { return *at; }
inline uint16_t pgm_read_word(const uint16_t *at) { return *at; }
inline int16_t pgm_read_word(const int16_t *at) { return *at; }
inline uint32_t pgm_read_dword(const uint32_t *at) { return *at; }
#endif`;
