import { sectionHeading } from '../unit/text.ts';

/** Settings in the chip's own memory, in two copies so that one always holds; and why the chip started. */
export const keepingText = `${sectionHeading('Keeping')}

// Two copies, written in turn: when the supply fails while one is written, the other is still whole.
const uint8_t COPIES = 2;
uint8_t copyInUse = COPIES;

uint16_t settingsCheck(const Settings &of) {
  uint16_t check = 0xFFFF;
  const uint8_t *bytes = (const uint8_t *)&of;
  for (uint8_t i = 0; i < offsetof(Settings, check); i++) check = checkOf(check, bytes[i]);
  return check;
}

void *placeOfCopy(uint8_t copy) {
  return (void *)(uintptr_t)(copy * sizeof(Settings));
}

void recallSettings() {
  takeProgramSettings();
  for (uint8_t copy = 0; copy < COPIES; copy++) {
    Settings found;
    eeprom_read_block(&found, placeOfCopy(copy), sizeof(Settings));
    if (found.table != TABLE || found.program != PROGRAM || found.check != settingsCheck(found)) continue;
    if (settingsKept && (int16_t)(found.turn - settings.turn) <= 0) continue;
    settings = found;
    settingsKept = true;
    copyInUse = copy;
  }
}

void keepSettings() {
  copyInUse = copyInUse == 0 ? 1 : 0;
  settings.turn++;
  settings.check = settingsCheck(settings);
  wdt_reset();  // writing takes 3.4 ms a byte
  eeprom_update_block(&settings, placeOfCopy(copyInUse), sizeof(Settings));
  settingsKept = true;
}

void forgetSettings() {
  takeProgramSettings();
  for (uint8_t copy = 0; copy < COPIES; copy++) eeprom_update_dword((uint32_t *)placeOfCopy(copy), ~TABLE);
  copyInUse = COPIES;
}

// Before anything else: why the chip started, and no watchdog until the loop runs.
uint8_t startFlags __attribute__((section(".noinit")));
void readStartFlags() __attribute__((naked, used, section(".init3")));
void readStartFlags() {
  startFlags = MCUSR;
  MCUSR = 0;
  wdt_disable();
}

void nameStart() {
  if (startFlags & _BV(WDRF)) startReason = 'w';
  else if (startFlags & _BV(BORF)) startReason = 'b';
  else if (startFlags & _BV(EXTRF)) startReason = 'x';
  else if (startFlags & _BV(PORF)) startReason = 'p';
}`;
