# zsh -f complete.zsh LINE: what a real zsh makes of LINE and a tabulator, printed. $docs is the
# folder of the completions. Nothing is typed before the prompt is there that the line before asked
# for; what is waited for never stands in what is typed, whose echo comes back too.
zmodload zsh/zpty || exit 1
await() { zpty -r -m inner seen "*$1*" || exit 1 }
# run PROMPT COMMANDS
run() {
    zpty -w -n inner "$2; PS1='<'$1'>'"$'\r'
    await "<$1>"
}
export PS1='<first>'
zpty -b inner zsh -f -i || exit 1
await '<first>'
run second 'RPS1= ; setopt no_list_beep no_auto_list no_auto_menu'
run third "fpath=(${(q)docs}/zsh \$fpath); autoload -Uz compinit; compinit -u -D"
run fourth 'show() { zle expand-or-complete; print -r -- "<""<$BUFFER>"">"; BUFFER= }'
run last 'zle -N show; bindkey "^Xs" show'
zpty -w -n inner "$1"$'\C-Xs'
await '<<*>>'
print -r -- ${${seen##*<<}%%>>*}
zpty -d inner
