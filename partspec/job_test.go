package partspec_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/parttest"
	"catchplate/partspec/units"
)

// micrometre is how far computed nominal sizes may be from the expected ones.
const micrometre = 0.001

// read parses one source that must be good.
func read(t *testing.T, text string) *partspec.Job {
	t.Helper()
	job, _, found := partspec.Parse([]partspec.Source{{Name: "test.hcl", Text: []byte(text)}})
	for _, d := range found {
		t.Error(parttest.Describe(d))
	}
	require.NotNil(t, job)
	return job
}

// brassPart wraps features into a part of 40 mm from 60 mm bar.
func brassPart(features string) string {
	return "part \"p\" {\n material = \"brass\"\n length = 40\n stock \"bar\" {\n diameter = 60\n}\n" + features + "\n}\n"
}

func feature[F partspec.Feature](t *testing.T, job *partspec.Job, part, name string) F {
	t.Helper()
	require.NotNil(t, job.Part(part))
	f, ok := job.Part(part).Feature(name).(F)
	require.True(t, ok, "%s.%s is a %T", part, name, job.Part(part).Feature(name))
	return f
}

func span(left, right units.Length) partspec.Span { return partspec.Span{Left: left, Right: right} }
