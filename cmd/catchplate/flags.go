package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"catchplate/partspec/units"
)

// length is a flag that takes a length as a drawing writes it: 12.5, "7/8 in", "16 swg".
type length struct {
	value  units.Length
	set    bool
	signed bool // a negative one is taken too
}

func (l *length) String() string {
	if !l.set {
		return ""
	}
	return l.value.Figure(units.InMM)
}

// Set reads the flag's text.
func (l *length) Set(text string) error {
	parse := units.ParseLength
	if l.signed {
		parse = units.ParsePosition
	}
	v, err := parse(text, units.MM)
	if err != nil {
		return err
	}
	l.value, l.set = v, true
	return nil
}

// Type names the kind of value in help.
func (l *length) Type() string { return "length" }

func (l *length) mm() float64 { return float64(l.value) }

// number is a flag that takes a finite number within bounds: a speed, a force, an angle.
type number struct {
	value     float64
	set       bool
	low, high float64
}

func (n *number) String() string {
	if !n.set {
		return ""
	}
	return strconv.FormatFloat(n.value, 'g', -1, 64)
}

// Set reads the flag's text.
func (n *number) Set(text string) error {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v >= n.low && v <= n.high) {
		return fmt.Errorf("write a number from %g to %g", n.low, n.high)
	}
	n.value, n.set = v, true
	return nil
}

// Type names the kind of value in help.
func (n *number) Type() string { return "number" }

// between makes a number flag with its bounds and no default.
func between(low, high float64) number { return number{low: low, high: high} }

// preset makes a number flag with its bounds and a default.
func preset(value, low, high float64) number {
	return number{value: value, set: true, low: low, high: high}
}

// need marks flags without which a command cannot run.
func need(cmd *cobra.Command, names ...string) {
	for _, name := range names {
		if err := cmd.MarkFlagRequired(name); err != nil {
			panic(err) // a flag that the command does not have: a slip in this package
		}
	}
}

// exactlyOne makes a check that one of some flags was given, and no other of them.
func exactlyOne(names ...string) func(*cobra.Command, []string) error {
	choices := "--" + strings.Join(names, ", --")
	return func(cmd *cobra.Command, _ []string) error {
		given := 0
		for _, name := range names {
			if cmd.Flags().Changed(name) {
				given++
			}
		}
		if given != 1 {
			return wrongUse("give one of %s, not %d of them", choices, given)
		}
		return nil
	}
}

// inOrder joins checks: the first that fails ends them.
func inOrder(checks ...func(*cobra.Command, []string) error) func(*cobra.Command, []string) error {
	return func(cmd *cobra.Command, args []string) error {
		for _, check := range checks {
			if err := check(cmd, args); err != nil {
				return err
			}
		}
		return nil
	}
}
