import { sectionHeading } from '../unit/text.ts';

/** Longest recorded turn. [ms] */
export const TURN_MOST_MS = 600_000;

/** What a maker can ask for over the serial line; docs/line-format.md lists it. */
export const commandsText = `${sectionHeading('Commands')}

char command[32];
uint8_t commandLength = 0;
uint32_t turnBeganMs;
bool statusAsked = true;  // at the start nobody has to ask

const char SETTINGS_WORD[] PROGMEM = "settings";
const char TURN_WORD[] PROGMEM = "turn";
const char STOP_WORD[] PROGMEM = "stop";
const char THRESHOLDS_WORD[] PROGMEM = "thresholds ";
const char NORTH_WORD[] PROGMEM = "north ";
const char FORGET_WORD[] PROGMEM = "forget";

// What follows the word in the command, or nothing when it begins otherwise.
const char *after(const char *word) {
  const char *at = command;
  for (;; word++, at++) {
    const char letter = pgm_read_byte((const uint8_t *)word);
    if (letter == 0) return at;
    if (letter != *at) return 0;
  }
}

bool is(const char *word) {
  const char *rest = after(word);
  return rest != 0 && *rest == 0;
}

// Reads a whole number of at most five digits; nothing when there is none.
const char *readNumber(const char *at, uint16_t &number) {
  uint32_t value = 0;
  uint8_t digits = 0;
  for (; *at >= '0' && *at <= '9'; at++) {
    value = value * 10 + (*at - '0');
    if (++digits > 5) return 0;
  }
  if (digits == 0 || value > 65535) return 0;
  number = value;
  return at;
}

bool takeThresholds(const char *at) {
  uint16_t pair, low, high;
  if (!(at = readNumber(at, pair)) || pair >= PAIRS || *at++ != ' ') return false;
  if (!(at = readNumber(at, low)) || *at++ != ' ') return false;
  if (!(at = readNumber(at, high)) || *at != 0) return false;
  if (low >= high || high > COUNTS_MOST) return false;
  settings.low[pair] = low;
  settings.high[pair] = high;
  return true;
}

// Degrees with at most two decimals.
bool takeNorth(const char *at) {
  uint16_t degrees;
  uint16_t hundredths = 0;
  if (!(at = readNumber(at, degrees)) || degrees >= 360) return false;
  if (*at == '.') {
    uint8_t places = 0;
    for (at++; *at >= '0' && *at <= '9' && places < 2; at++, places++) {
      hundredths = hundredths * 10 + (*at - '0');
    }
    if (places == 0) return false;
    if (places == 1) hundredths *= 10;
  }
  if (*at != 0) return false;
  settings.north = degrees * 100 + hundredths;
  return true;
}

void beginTurn(uint32_t nowMs) {
  recordingTurn = true;
  turnBeganMs = nowMs;
  turnedChannels = 0;
}

// Channels that stood still while others changed are stuck: a turn passes the edges of all of them.
void endTurn() {
  if (recordingTurn && turnedChannels != 0) stillChannels = ~turnedChannels & ALL_CHANNELS;
  recordingTurn = false;
}

void obey(uint32_t nowMs) {
  const char *rest;
  if (is(TURN_WORD)) {
    beginTurn(nowMs);
  } else if (is(STOP_WORD)) {
    endTurn();
  } else if (is(FORGET_WORD)) {
    forgetSettings();
  } else if ((rest = after(THRESHOLDS_WORD)) != 0) {
    if (takeThresholds(rest)) keepSettings();
  } else if ((rest = after(NORTH_WORD)) != 0) {
    if (takeNorth(rest)) keepSettings();
  }
  statusAsked = true;
}

// One character of a command; a line too long to be one is not obeyed.
void takeCharacter(char character, uint32_t nowMs) {
  if (character == '\\r') return;
  if (character != '\\n') {
    if (commandLength < sizeof(command)) command[commandLength] = character;
    if (commandLength < 255) commandLength++;
    return;
  }
  if (commandLength > 0 && commandLength < sizeof(command)) {
    command[commandLength] = 0;
    obey(nowMs);
  } else if (commandLength > 0) {
    statusAsked = true;
  }
  commandLength = 0;
}`;
