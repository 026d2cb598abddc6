# compare-ratios.awk PAGE ROWS: the ratios of a run (ROWS, from table-rows.sh) beside those that PAGE documents.
BEGIN { FS = " *\\| *"; print "| domain | ours against | documented | now | now / documented |\n|---|---|---|---|---|" }
$4 !~ /^[0-9.]+$/ || NF != 5 { next }
FNR == NR { documented[$2 "|" $3] = $4; next }
{
  key = $2 "|" $3
  was = key in documented ? documented[key] : "none"
  # The last value stands in brackets: a bare > after printf would open a file.
  printf "| %s | %s | %s | %s | %s |\n", $2, $3, was, $4, (was + 0 > 0 ? sprintf("%.2f", $4 / was) : "none")
}
