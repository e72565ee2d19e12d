# Completion of squaredig's command line for bash.
_squaredig() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} command= i
  local commands="new check run field ground pegs dig base fill record"
  COMPREPLY=()
  for ((i = 1; i < COMP_CWORD; i++)); do
    case " $commands " in *" ${COMP_WORDS[i]} "*) command=${COMP_WORDS[i]} && break ;; esac
  done
  case $before in
    --out) compopt -o filenames 2>/dev/null; mapfile -t COMPREPLY < <(compgen -d -- "$word") && return ;;
    --progress) mapfile -t COMPREPLY < <(compgen -W "auto never" -- "$word") && return ;;
    --threads) return ;;
  esac
  if [[ -z $command ]]; then
    mapfile -t COMPREPLY < <(compgen -W "$commands --version --help" -- "$word")
  elif [[ $word == -* && $command == new ]]; then
    mapfile -t COMPREPLY < <(compgen -W "--quiet --help" -- "$word")
  elif [[ $word == -* ]]; then
    mapfile -t COMPREPLY < <(compgen -W "--out --json --quiet --progress --threads --help" -- "$word")
  else # a folder, or a job file
    compopt -o filenames 2>/dev/null
    mapfile -t COMPREPLY < <(compgen -d -- "$word"; [[ $command == new ]] || compgen -f -X '!*.toml' -- "$word")
  fi
}
complete -F _squaredig squaredig
