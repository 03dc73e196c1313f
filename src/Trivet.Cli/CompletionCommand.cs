using System.CommandLine;

namespace Trivet.Cli;

/// <summary><c>trivet completion SHELL</c>: a script that lets a shell complete commands, options and their words.</summary>
internal static class CompletionCommand
{
    public static Command Create()
    {
        var shell = new Argument<string>("shell") { Description = "bash, zsh or pwsh (PowerShell).", HelpName = "SHELL" };
        shell.AcceptOnlyFromAmong("bash", "zsh", "pwsh");
        var command = new TaughtCommand(
            "completion",
            "Print a script for shell completion. It needs nothing but trivet itself.",
            new Example("completion bash", "bash: put  source <(trivet completion bash)  into ~/.bashrc."),
            new Example("completion zsh", "zsh: put  source <(trivet completion zsh)  into ~/.zshrc, after compinit."),
            new Example("completion pwsh", "PowerShell: put  trivet completion pwsh | Out-String | Invoke-Expression  into $PROFILE."))
        {
            shell,
        };
        command.SetAction(parsed => parsed.InvocationConfiguration.Output.Write(Script(parsed.GetRequiredValue(shell))));
        return command;
    }

    // The program itself answers `trivet [suggest:POSITION] "LINE"` with one word a line; the scripts only pass the line on and
    // fall back on file names, which the shell knows best.
    private static string Script(string shell) => shell switch
    {
        "bash" => """
            _trivet_complete() {
              local line="${COMP_LINE:0:COMP_POINT}" IFS=$'\n'
              COMPREPLY=($(compgen -W "$("${COMP_WORDS[0]}" "[suggest:${#line}]" "$line" 2>/dev/null)" -- "${COMP_WORDS[COMP_CWORD]}"))
            }
            complete -o default -F _trivet_complete trivet

            """,
        "zsh" => """
            _trivet_complete() {
              local line="${LBUFFER}"
              local -a suggestions
              suggestions=("${(@f)$(${words[1]} "[suggest:${#line}]" "$line" 2>/dev/null)}")
              if [[ -n "${suggestions[1]}" ]]; then compadd -- "${suggestions[@]}"; else _files; fi
            }
            compdef _trivet_complete trivet

            """,
        _ => """
            Register-ArgumentCompleter -Native -CommandName trivet -ScriptBlock {
              param($wordToComplete, $commandAst, $cursorPosition)
              $line = $commandAst.ToString().PadRight($cursorPosition).Substring(0, $cursorPosition)
              & $commandAst.CommandElements[0].Value "[suggest:$cursorPosition]" $line 2>$null |
                Where-Object { $_ -like "$wordToComplete*" } |
                ForEach-Object { [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_) }
            }

            """,
    };
}
