package holding

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/process"
)

// OnCentres is the surface that work between centres is located on.
const OnCentres = "centres"

// carrierRoom is what a carrier covers of the driven end. Common practice, no source.
const carrierRoom = 12.0

// between lists work between two centres, driven by a carrier (rule B-11).
func (s Shop) between(h partspec.Holding) []Mount {
	if !s.Centred[partspec.Left] || !s.Centred[partspec.Right] {
		return nil
	}
	var mounts []Mount
	for _, free := range []partspec.End{partspec.Left, partspec.Right} {
		mounts = append(mounts, Mount{Holding: h, Free: free, Surface: OnCentres, Z0: 0, Z1: s.Length, Radius: s.gripRadius(), Centre: true, Between: true, Minutes: s.minutes(h), RunOut: s.runOut(h, false)})
	}
	return mounts
}

// cutsBetween reports whether a task cannot be done between centres: holes, faces and parting, and what the carrier covers.
func (s Shop) cutsBetween(m Mount, t process.Task, way process.Way) bool {
	if t.Inside || t.Process == plan.Face || t.Process == plan.PartOff || t.Process == plan.SawOff || t.Process == plan.Die {
		return true
	}
	if m.Free == partspec.Right {
		return way.Span[0] < carrierRoom
	}
	return way.Span[1] > s.Length-carrierRoom
}

// centred reports whether the centre holes that a mount needs are there.
func (s Shop) centred(m Mount, done func(int) bool) bool {
	for _, e := range []partspec.End{partspec.Left, partspec.Right} {
		if e != m.Free && !m.Between {
			continue
		}
		for i, t := range s.Tasks {
			if t.ID == process.CentreID(e) && !done(i) {
				return false
			}
		}
	}
	return true
}
