// Command fixslate compiles a repair plan into everything a repair video
// needs, and checks it.
package main

import (
	"os"

	"fixslate/cmd/internal/cli"
)

func main() {
	os.Exit(cli.Main(os.Args[1:]))
}
