# Ten invented days, a line a minute: the vane follows the wind until day 6 at noon, then it stands still.
BEGIN {
  print "time,heading_deg,speed_ms"
  for (m = 0; m < 14400; m++) {
    if (m < 8280) heading = (230 + 60 * sin(m / 300) + 25 * sin(m / 7) + 12 * cos(m * m)) % 360
    step = int(heading / 11.25) * 11.25 + 5.625
    printf "2024-05-%02dT%02d:%02d:00Z,%.2f,%.1f\n", 1 + m / 1440, (m / 60) % 24, m % 60, step, 4 + 1.5 * sin(m / 200) + sin(m / 3)
  }
}
