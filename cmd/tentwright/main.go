// Command tentwright turns a shop's files and a job file into a priced quote
// workbook, with crew hours, truck manifest and pick list.
package main

import (
	"os"

	"tentwright/cmd/internal/cli"
)

func main() { os.Exit(cli.Main(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
