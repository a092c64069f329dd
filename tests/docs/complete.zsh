# zsh -f complete.zsh LINE: what a real zsh makes of LINE and a tabulator, printed. $docs is the
# folder of the completions.
zmodload zsh/zpty || exit 1
zpty -b inner zsh -f -i
type_in() { zpty -w -n inner "$1" }
type_in $'PROMPT= RPS1= ; stty -echo\r'
type_in $'fpath=('$docs$'/zsh $fpath); autoload -Uz compinit; compinit -u -D\r'
type_in $'show() { print -r -- "<<$BUFFER>>"; BUFFER= }; zle -N show; bindkey "^Xs" show\r'
type_in $'setopt no_list_beep no_auto_list no_auto_menu; print ready\r'
# What is typed before zsh has started would be lost: wait for the word.
zpty -r -m inner seen '*ready*' || exit 1
type_in "$1"$'\t'
type_in $'\C-Xs'
zpty -r -m inner seen '*<<*>>*' || exit 1
print -r -- ${${seen##*<<}%%>>*}
zpty -d inner
