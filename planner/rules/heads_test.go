package rules_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/planner/plan"
	"catchplate/planner/rules"
)

// Every head can be printed: nothing in it is empty, its class is that of its list, and no ID is used twice.
func TestHeadsAreComplete(t *testing.T) {
	id := regexp.MustCompile(`^[A-F]-[0-9]{2}[a-z]?$`)
	seen := map[string]bool{}
	for _, h := range rules.All().Heads() {
		assert.Regexp(t, id, h.ID)
		assert.False(t, seen[h.ID], "%s is used twice", h.ID)
		seen[h.ID] = true
		for what, s := range map[string]string{"title": h.Title, "text": h.Text, "why": h.Why, "source": h.Source} {
			assert.NotEmpty(t, s, "%s: %s", h.ID, what)
		}
		assert.True(t, strings.HasPrefix(h.Text, "IF ") && strings.Contains(h.Text, " THEN "), "%s: %s", h.ID, h.Text)
		assert.Contains(t, []string{"standard", "published", "common practice", "opinion"}, h.Sure, h.ID)
		found, ok := rules.All().Head(h.ID)
		assert.True(t, ok)
		assert.Equal(t, h, found)
	}
}

func TestClassesAreThoseOfTheLists(t *testing.T) {
	s := rules.All()
	same := func(class string, h plan.Rule) { assert.Equal(t, class, h.Class, h.ID) }
	for _, r := range s.Orders {
		same("order", r.Rule)
	}
	for _, r := range s.Holdings {
		same("holding", r.Rule)
	}
	for _, r := range s.Numbers {
		same("number", r.Rule)
	}
	for _, r := range s.Cautions {
		same("caution", r.Rule)
	}
}

// A rule is in force unless it is left out; an ID that no rule bears is never in force.
func TestSetKnowsItsRules(t *testing.T) {
	s := rules.All()
	assert.True(t, s.Has("A-01"))
	assert.False(t, s.Has("Z-99"))
	without := s.Without("A-01").Without("A-03")
	assert.False(t, without.Has("A-01"))
	assert.False(t, without.Has("A-03"))
	assert.True(t, without.Has("A-12"))
	assert.True(t, s.Has("A-01"), "leaving out makes a set of its own")
	_, ok := without.Head("A-01")
	assert.True(t, ok, "the head can still be told")
}
