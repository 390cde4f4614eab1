package main

import (
	"strings"

	"github.com/spf13/cobra"
)

var shells = []string{"bash", "zsh", "fish", "powershell"}

func (a *app) completion() *cobra.Command {
	accepted := "one of " + strings.Join(shells, ", ")
	return &cobra.Command{
		Use: "completion SHELL", Short: "Completion of commands and options for a shell",
		Long: "Writes a script that completes commands and options with the tab key, for bash,\n" +
			"zsh, fish or powershell.",
		Example: "  source <(barkslip completion bash)\n" +
			"  barkslip completion zsh > \"${fpath[1]}/_barkslip\"\n" +
			"  barkslip completion fish > ~/.config/fish/completions/barkslip.fish\n" +
			"  barkslip completion powershell | Out-String | Invoke-Expression",
		ValidArgs: shells,
		Args:      oneArgument("SHELL", accepted),
		RunE: func(c *cobra.Command, args []string) error {
			switch args[0] {
			case "bash":
				return c.Root().GenBashCompletionV2(a.out, true)
			case "zsh":
				return c.Root().GenZshCompletion(a.out)
			case "fish":
				return c.Root().GenFishCompletion(a.out, true)
			case "powershell":
				return c.Root().GenPowerShellCompletionWithDesc(a.out)
			}
			return mistaken("SHELL", args[0], accepted)
		},
	}
}

// help answers `barkslip help COMMAND`.
func (a *app) help() *cobra.Command {
	return &cobra.Command{
		Use: "help [COMMAND]", Short: "Help about a command",
		Example: "  barkslip help reckon ready",
		RunE: func(c *cobra.Command, args []string) error {
			asked, left, err := c.Root().Find(args)
			if err == nil && len(left) == 0 {
				return asked.Help()
			}
			return subcommandsOnly(asked, left)
		},
	}
}
