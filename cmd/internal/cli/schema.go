package cli

import (
	"github.com/spf13/cobra"

	"fixslate/plan"
)

func newSchema(s streams) *cobra.Command {
	return &cobra.Command{
		Use:   "schema",
		Short: "print the JSON Schema of the plan language",
		Long: `Schema prints the JSON Schema (draft-07) of the plan language, for editors that
complete and check TOML by a schema.`,
		Example: "  fixslate schema > plan.schema.json",
		Args:    takes(0, 0),
		RunE: func(cmd *cobra.Command, args []string) error {
			_, err := s.out.Write(plan.Schema())
			return err
		},
	}
}
