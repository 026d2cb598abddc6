# zsh-tab.zsh PAGES: a zsh behind a pseudo terminal, as a person has it, and what its TAB key makes of a line.
# Ends with 77 where this zsh has no pseudo terminals.
emulate -R zsh
zmodload zsh/zpty 2>/dev/null || { print "skipped: no zsh/zpty"; exit 77 }
zmodload zsh/datetime
typeset place=$(mktemp -d)
trap 'zpty -d shell 2>/dev/null; rm -rf $place' EXIT
mkdir $place/garden
cd $place
export TERM=dumb
zpty -b shell zsh -f -i

# What the terminal shows up to WORDS, for twenty seconds at most; control characters are left out.
typeset screen
shows() {
  local chunk
  float until=$((EPOCHREALTIME + 20))
  while (( EPOCHREALTIME < until )); do
    while zpty -r -t shell chunk; do screen+=${chunk//[[:cntrl:]]/}; done
    [[ $screen == *"$1"* ]] && return 0
    sleep 0.05
  done
  return 1
}

# completes LINE WORDS: LINE and the TAB key; then the terminal shows WORDS.
completes() {
  screen=
  zpty -w -n shell $'\C-u'"$1"$'\t'
  shows "$2" || { print -r -- "FAILED: \"$1\" and TAB show \"$screen\", not \"$2\""; exit 1 }
}

zpty -w shell "fpath=(${(q)1} \$fpath); autoload -Uz compinit; compinit -D -u; unsetopt beep; PS1='rea''dy> '"
shows "ready> " || { print -r -- "FAILED: the shell does not begin: $screen"; exit 1 }
completes "noonleaf to" "noonleaf today"
completes "noonleaf week gar" "noonleaf week garden/"
completes "noonleaf week garden --for" "--format"
completes "noonleaf week garden --format h" "--format html"
completes "noonleaf log garden mul" "log garden mulch"
print "a command, a folder, an option, its value and an event are completed by TAB"
