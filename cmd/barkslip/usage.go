package main

// usage is the form of the help of every command, behind its description.
const usage = `Usage:
  {{.UseLine}}{{if .HasExample}}

Examples:
{{.Example}}{{end}}{{if .HasAvailableSubCommands}}{{$all := .Commands}}{{range $group := .Groups}}

{{.Title}}{{range $all}}{{if and (eq .GroupID $group.ID) .IsAvailableCommand}}
  {{rpad .Name .NamePadding}} {{.Short}}{{end}}{{end}}{{end}}{{if not .AllChildCommandsHaveGroup}}

Commands:{{range $all}}{{if and (eq .GroupID "") .IsAvailableCommand}}
  {{rpad .Name .NamePadding}} {{.Short}}{{end}}{{end}}{{end}}{{end}}{{if .HasAvailableLocalFlags}}

Options:
{{.LocalFlags.FlagUsagesWrapped 80 | trimTrailingWhitespaces}}{{end}}{{if .HasAvailableSubCommands}}

"{{.CommandPath}} COMMAND --help" tells more about one of them.{{end}}
`
