# Invented cups spun by hand and let go: they lose 0.05 turns a second each second, and a tenth of their speed.
BEGIN {
  print "time_s"
  for (hz = 4; hz > 0.02; at += 0.001) {
    hz -= (0.05 + 0.1 * hz) * 0.001
    turned += hz * 0.001
    if (turned >= pulses + 1) { pulses++; printf "%.3f\n", at }
  }
}
