# profile-shares.awk PARTS SAMPLES: what `perf script -F comm,ip,sym` prints, as a table of shares by part. With -v only=…
# samples alone whose call chain has a function that it matches.
FNR == NR {
  if ($0 !~ /^#/ && split($0, row, "\t") == 2) { name[++parts] = row[1]; pattern[parts] = row[2] }
  next
}
function part_of(symbol,    i) {
  if (symbol in known) return known[symbol]
  for (i = 1; i <= parts; ++i) if (symbol ~ pattern[i]) return known[symbol] = name[i]
  return known[symbol] = ""
}
function close_sample() {
  if (ours && (only == "" || wanted)) { ++samples; ++count[part == "" ? "rest" : part] }
  ours = 0; part = ""; wanted = 0
}
/^[^ \t]/ { close_sample(); ours = $1 ~ /^(noonleaf|bench_)/; next }
only != "" && $0 ~ only { wanted = 1 }
NF >= 2 && part == "" { symbol = $0; sub(/^[ \t]*[0-9a-f]+ /, "", symbol); part = part_of(symbol) }
END {
  close_sample()
  printf "\n%s: %d samples\n", job, samples
  for (part in count) printf "%5.1f %%  %s\n", 100 * count[part] / samples, part | "sort -rn"
}
