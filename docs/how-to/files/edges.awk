# Moments of all edges of an invented cup switch, 100 turns by hand; every edge bounces for up to 0.3 ms.
BEGIN {
  print "edge_us"
  for (n = 0; n < 400; n++) {
    at = 60000 * n + 9000 * sin(n)
    printf "%d\n%d\n%d\n", at, at + 100 + 20 * sin(7 * n), at + 260 + 40 * cos(3 * n)
  }
}
