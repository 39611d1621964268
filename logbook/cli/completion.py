"""Write what a shell needs to complete the words of this program: its commands, their options and the words those take.

Made from the commands' own arguments, so that it is never behind them. For bash and zsh it is a text to be read at the start of a
shell, for fish a file of its own, for PowerShell a part of the profile.
"""

from argparse import Action, ArgumentParser, Namespace
from collections.abc import Iterator, Mapping
from importlib import import_module

from logbook.cli.say import CLEAN

SHELLS = ("bash", "zsh", "fish", "powershell")

_BASH = """\
# Completes the words of logbook in bash.
_logbook() {{
    local word=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}} words=
    if ((COMP_CWORD == 1)); then
        words="{commands} --help --version"
    else
        case "${{COMP_WORDS[1]}} $before" in
{values}
        *)
            case "${{COMP_WORDS[1]}} $word" in
{options}
            esac ;;
        esac
    fi
    COMPREPLY=()
    if [[ -n $words ]]; then mapfile -t COMPREPLY < <(compgen -W "$words" -- "$word"); fi
}}
complete -o bashdefault -o default -F _logbook logbook
"""

_ZSH = """\
#compdef logbook
# Completes the words of logbook in zsh.
_logbook() {{
    local word=$words[CURRENT] before=$words[CURRENT-1]
    local -a found
    if ((CURRENT == 2)); then
        found=({commands} --help --version)
    else
        case "$words[2] $before" in
{values}
        *)
            case "$words[2] $word" in
{options}
            esac ;;
        esac
    fi
    if ((#found)); then compadd -a found; else _files; fi
}}
compdef _logbook logbook
"""

_POWERSHELL = """\
# Completes the words of logbook in PowerShell.
Register-ArgumentCompleter -Native -CommandName logbook -ScriptBlock {{
    param($word, $line, $at)
    $options = @{{
{options}
    }}
    $typed = @($line.CommandElements | ForEach-Object {{ $_.ToString() }})
    $first = $typed.Count -le 1 -or ($typed.Count -eq 2 -and $word -ne '')
    $found = if ($first) {{ {commands} }} elseif ($word -like '-*') {{ $options[$typed[1]] }} else {{ @() }}
    $found | Where-Object {{ $_ -like "$word*" }} | ForEach-Object {{
        [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
    }}
}}
"""


def arguments(parser: ArgumentParser) -> None:
    """Add the shell."""
    parser.add_argument("shell", metavar="SHELL", choices=SHELLS, help=", ".join(SHELLS))


def run(asked: Namespace) -> int:
    """Print it and return the exit status."""
    print(completion(asked.shell), end="")
    return CLEAN


def completion(shell: str) -> str:
    """Return what a shell needs."""
    from logbook.cli.main import COMMANDS

    told = {name: tuple(_actions(name)) for name in COMMANDS}
    if shell == "fish":
        return "\n".join(_fish(told, COMMANDS)) + "\n"
    if shell == "powershell":
        options = "\n".join(f"        '{name}' = {_listed(_options(actions))}" for name, actions in told.items())
        return _POWERSHELL.format(commands=_listed([*told, "--help", "--version"]), options=options)
    return (_BASH if shell == "bash" else _ZSH).format(
        commands=" ".join(told),
        values="\n".join(_value_cases(told, shell)),
        options="\n".join(
            f'            "{name} "-*) {_set(_options(actions), shell)} ;;' for name, actions in told.items()
        ),
    )


def _actions(name: str) -> Iterator[Action]:
    """Give the arguments of a command, as its own parser has them."""
    parser = ArgumentParser(prog=name)
    import_module(f"logbook.cli.{name}").arguments(parser)
    yield from parser._actions  # noqa: SLF001 - argparse tells of them nowhere else


def _options(actions: tuple[Action, ...]) -> list[str]:
    return [option for action in actions for option in action.option_strings if option.startswith("--")]


def _value_cases(told: Mapping[str, tuple[Action, ...]], shell: str) -> Iterator[str]:
    """Give a case for every option that takes a value: its words, or else a file's name as the shell completes it."""
    for name, actions in told.items():
        for action in actions:
            words = [str(word) for word in action.choices or ()]
            if not action.option_strings and words:
                yield f'        "{name} {name}") {_set(words, shell)} ;;'
            for option in action.option_strings if action.nargs != 0 else ():
                yield f'        "{name} {option}") {_set(words, shell)} ;;'


def _set(words: list[str], shell: str) -> str:
    """Return the statement that offers words."""
    return f'words="{" ".join(words)}"' if shell == "bash" else f"found=({' '.join(words)})"


def _listed(words: list[str]) -> str:
    quoted = ", ".join(f"'{word}'" for word in words)
    return f"@({quoted})"


def _fish(told: Mapping[str, tuple[Action, ...]], commands: Mapping[str, str]) -> Iterator[str]:
    """Give the lines that fish reads, one a word."""
    yield "# Completes the words of logbook in fish."
    for name, said in commands.items():
        yield f"complete -c logbook -n __fish_use_subcommand -f -a {name} -d {_in_quotes(said)}"
    for name, actions in told.items():
        within = f"complete -c logbook -n '__fish_seen_subcommand_from {name}'"
        for action in actions:
            words = [str(word) for word in action.choices or ()]
            offered = f" -x -a {_in_quotes(' '.join(words))}" if words else ""
            if not action.option_strings and words:
                yield f"{within} -f -a {_in_quotes(' '.join(words))}"
            for option in (option for option in action.option_strings if option.startswith("--")):
                takes = offered or (" -r" if action.nargs != 0 else "")
                yield f"{within} -l {option[2:]}{takes} -d {_in_quotes(action.help or '')}"


def _in_quotes(text: str) -> str:
    return "'" + text.replace("\\", "\\\\").replace("'", "\\'") + "'"
