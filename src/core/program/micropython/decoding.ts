/** From counts to a line in MicroPython; the same steps as the C++ unit, so that both give the same lines. */
export const decodingText = `def check_of(check, data):
    for byte in data:
        check ^= byte << 8
        for _ in range(8):
            check = ((check << 1) ^ 0x1021) & 0xFFFF if check & 0x8000 else (check << 1) & 0xFFFF
    return check


def apart(one, other):
    between = abs(one - other)
    return 36000 - between if between > 18000 else between


def gap_between(one, other):
    gap = apart(HEADING[one], HEADING[other]) - HALF_WIDTH[one] - HALF_WIDTH[other] - SLACK
    return gap if gap > 0 else 0


def bit_of(channel):
    return 1 << (CHANNELS - 1 - channel)


class Vane:
    """Counts go in, judged words and lines come out."""

    def __init__(self):
        self.counts = [0] * CHANNELS
        self.take_program_settings()
        self.high = None
        self.word = 0
        self.last_word = None
        self.position = None
        self.last_position = None
        self.last_position_ms = 0
        self.jumped = False
        self.illegal_before = False
        self.dark_seen = False
        self.light_seen = False
        self.drowned = False
        self.changed = 0
        self.troubles = 0
        self.still = 0
        self.turned = 0
        self.recording = False
        self.line_number = 0
        self.pulses = 0
        self.edges = 0
        self.gust = 0
        self.north_sum = 0.0
        self.east_sum = 0.0
        self.vectors = 0
        self.last_vector_ms = 0
        self.last_pulses = 0
        self.last_speed_ms = 0
        self.start_reason = "u"

    def take_program_settings(self):
        self.low = list(LOW_COUNTS)
        self.high_at = list(HIGH_COUNTS)
        self.north = NORTH
        self.kept = False

    def judge(self, now_ms):
        """Judges self.counts; the first time the nearer threshold decides, later ones have hysteresis."""
        if self.high is None:
            self.high = 0
            for channel in range(CHANNELS):
                middle = (self.low[channel] + self.high_at[channel] + 1) // 2
                if self.counts[channel] >= middle:
                    self.high |= bit_of(channel)
        else:
            for channel in range(CHANNELS):
                if self.counts[channel] >= self.high_at[channel]:
                    self.high |= bit_of(channel)
                elif self.counts[channel] <= self.low[channel]:
                    self.high &= ~bit_of(channel)
        self.word = self.high ^ HIGH_IS_ZERO
        if self.last_word is None:
            self.last_word = ~self.word & ALL_CHANNELS
            self.notice_change()
            self.changed = 0
        self.judge_word(now_ms)

    def judge_word(self, now_ms):
        is_new = self.word != self.last_word
        if is_new:
            self.notice_change()
        self.position = POSITION_OF_WORD.get(self.word)
        elapsed = (now_ms - self.last_position_ms) & 0xFFFFFFFF
        if self.position is None:
            if is_new and self.last_position is not None:
                self.troubles = min(255, self.troubles + 1)
            if elapsed > HALF_TURN_MS:
                self.last_position = None
            return
        if self.position != self.last_position and self.last_position is not None:
            gap = gap_between(self.position, self.last_position)
            if elapsed <= HALF_TURN_MS and gap > (elapsed + 1) * TURN // 1000:
                self.jumped = True
                self.troubles = min(255, self.troubles + 1)
        self.last_position = self.position
        self.last_position_ms = now_ms

    def notice_change(self):
        changed = self.word ^ self.last_word
        self.last_word = self.word
        self.turned |= changed
        self.still &= ~changed
        if self.word != ALL_LIGHT:
            self.dark_seen = True
        if self.word != ALL_LIGHT ^ ALL_CHANNELS:
            self.light_seen = True
        self.changed |= changed
        if self.changed == ALL_CHANNELS:
            self.changed = 0
            self.troubles = 0

    def stuck(self):
        still = ALL_CHANNELS & ~self.changed
        is_one = still != 0 and still & (still - 1) == 0
        return self.still | (still if self.troubles >= 3 and is_one else 0)

    def begin_turn(self):
        self.recording = True
        self.turned = 0

    def end_turn(self):
        if self.recording and self.turned != 0:
            self.still = ~self.turned & ALL_CHANNELS
        self.recording = False

    def place_of(self, channel):
        """Place across the edge in thousandths, None when not in mid-edge, -1 when the light has changed."""
        dark, lit, curve, _, _ = EDGES[channel]
        span = abs(lit - dark)
        up = self.counts[channel] - dark if lit > dark else dark - self.counts[channel]
        if up < -(span // 4) or up > span + span // 4:
            return -1
        if up <= 0 or up >= span:
            return None
        scaled = up * (len(curve) - 1)
        point = scaled // span
        place = curve[point] + (curve[point + 1] - curve[point]) * (scaled - point * span) // span
        return None if place < 100 or place > 900 else place

    def finer(self):
        """Heading and half width from the one channel in mid-edge, or None when in doubt."""
        if EDGES is None:
            return None
        edge = None
        for channel in range(CHANNELS):
            if EDGES[channel] is None:
                continue
            place = self.place_of(channel)
            if place is None:
                continue
            if place < 0 or edge is not None:
                return None
            edge = (channel, place)
        if edge is None:
            return None
        channel, place = edge
        bit = bit_of(channel)
        other = POSITION_OF_WORD.get(self.word ^ bit)
        if other is None or other == self.position or gap_between(other, self.position) > 0:
            return None
        here = HEADING[self.position]
        ahead = HEADING[other] - here
        if ahead > 18000:
            ahead -= 36000
        if ahead < -18000:
            ahead += 36000
        _, _, _, width, switch = EDGES[channel]
        product = (place - switch) * width
        into_light = product // 1000 if product >= 0 else -(-product // 1000)
        is_lit = (self.word & bit) == (ALL_LIGHT & bit)
        from_edge = HALF_WIDTH[self.position] - (into_light if is_lit else -into_light)
        return ((here + (from_edge if ahead > 0 else -from_edge) + self.north) % 36000, width // 4)

    def add_to_mean(self, now_ms):
        if (now_ms - self.last_vector_ms) & 0xFFFFFFFF < 10:
            return
        self.last_vector_ms = now_ms
        if self.position is None:
            return
        angle = math.radians(HEADING[self.position] / 100)
        self.north_sum += math.cos(angle)
        self.east_sum += math.sin(angle)
        self.vectors += 1

    def mean(self):
        """Mean heading and agreement, each None where there is none."""
        if self.vectors == 0:
            return None, None
        length = math.sqrt(self.north_sum ** 2 + self.east_sum ** 2) / self.vectors
        agreement = min(1000, int(1000 * length + 0.5))
        if agreement == 0:
            return None, 0
        angle = math.degrees(math.atan2(self.east_sum, self.north_sum))
        return int(angle * 100 + self.north + 36000.5) % 36000, agreement

    def notice_heading(self):
        """What every line begins with: heading, half width, flags."""
        heading = half = None
        interpolated = False
        if self.position is not None:
            heading = (HEADING[self.position] + self.north) % 36000
            half = HALF_WIDTH[self.position]
            finer = self.finer()
            if finer is not None:
                heading, half = finer
                interpolated = True
        seen = (
            ("j", self.jumped),
            ("p", self.illegal_before),
            ("w", self.position is None),
            ("i", interpolated),
            ("s", self.stuck() != 0),
            ("d", not self.light_seen),
            ("l", not self.dark_seen),
            ("a", self.drowned),
            ("r", self.recording),
        )
        flags = "".join(letter for letter, is_set in seen if is_set and letter in FLAGS)
        return heading, half, flags

    def word_text(self, word):
        return "".join("1" if word & bit_of(channel) else "0" for channel in range(CHANNELS))

    def forget_noticed(self):
        self.line_number = (self.line_number + 1) & 0xFFFFFFFF
        self.jumped = False
        self.illegal_before = False
        self.north_sum = self.east_sum = 0.0
        self.vectors = 0
        self.gust = 0`;
