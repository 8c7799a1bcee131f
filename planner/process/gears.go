package process

import (
	"fmt"

	"catchplate/partspec"
	"catchplate/planner/numbers/thread"
)

// gears says how to set the lathe for a pitch: the wheels, or the gearbox where no wheels are listed.
func (c *Context) gears(f *partspec.Thread) (string, bool) {
	pitch := thread.PitchOf(f.Thread.Pitch, f.Thread.TPI)
	if len(c.Lathe.ChangeWheels) == 0 {
		return fmt.Sprintf("Set the gearbox to a pitch of %.4g mm.", pitch), true
	}
	train, err := thread.ChangeWheels(c.Lathe.ChangeWheels, thread.Leadscrew{Pitch: c.Lathe.LeadscrewPitch}, pitch, f.Length.Value)
	if err != nil || !train.Allowed {
		return "", false
	}
	text := fmt.Sprintf("Change wheels: %d on the spindle drives %d", train.Driver, train.Driven)
	if train.Driver2 > 0 {
		text += fmt.Sprintf("; on its stud %d drives %d on the leadscrew", train.Driver2, train.Driven2)
	}
	if train.Exact {
		return text + "; the pitch is exact.", true
	}
	return fmt.Sprintf("%s; the pitch is off by %.4f mm over the length of the thread.", text, float64(train.ErrorLength.Abs())), true
}
