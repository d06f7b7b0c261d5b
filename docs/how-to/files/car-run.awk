# An invented car run: five speeds out to the north and back, 3 m/s of wind from the north.
# The invented cups turn by 0.25 m/s + 0.75 m a pulse. Usage: awk -v what=count -f car-run.awk
BEGIN {
  print (what == "count") ? "time_s,pulses" : "time_s,speed_m_s,course_deg"
  split("6 10 14 18 22", goals, " ")
  for (way = 1; way >= -1; way -= 2)
    for (n = 1; n <= 5; n++)
      for (s = 0; s < 45; s += 0.1) {
        goal = (s > 37) ? 0 : goals[n]
        step = goal - speed
        speed += (step > 0.25) ? 0.25 : (step < -0.3) ? -0.3 : step
        wind = way * speed + 3
        if (wind < 0) wind = -wind
        if (wind >= 0.6) pulses += 0.1 * (wind - 0.25) / 0.75
        at = tenths * 0.1; tenths++
        if (what == "count" && tenths % 5 == 1) printf "%.1f,%d\n", at, pulses
        if (what != "count" && tenths % 10 == 1) printf "%.1f,%.3f,%d\n", at + 12, speed, (way > 0) ? 0 : 180
      }
}
