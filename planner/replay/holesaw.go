package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/tables"
)

const (
	// mostPilotSlack is how much wider than a hole saw's pilot its hole may be. Ours, no source.
	mostPilotSlack = 0.25
	// toothRows is how far apart teeth of one kind stand in a hole saw's ring, mm: 5 from tooth to tooth, and left, right and straight in turn (4 to 6 an inch, from memory).
	toothRows = 15.0
)

// sawWider is how much wider than the saw its hole may come out, on radius: the worse end of the table.
func sawWider() float64 {
	row, _ := tables.FindProcess("hole saw")
	return float64(row.RunOut.High) / 2
}

// loosen tells of what a hole saw took how much wider it may be, and how far beside its pilot's hole it may lie.
func (t *taken) loosen(f *flatWalk, m pass) {
	if m.Kind != partspec.HoleSaw {
		return
	}
	t.over = sawWider()
	if found := f.pilot(m); found > float64(m.Pilot) {
		t.off += (found - float64(m.Pilot)) / 2
	}
}

// ahead is how far before a tool's end its pilot stands.
func (c cutter) ahead() float64 {
	if c.Kind == partspec.HoleSaw {
		return float64(c.Lead)
	}
	return 0
}

// checkHoleSaw holds what a hole saw needs: a hole that its pilot fits, metal all round its ring, a cup that takes the whole thickness in, and the way right
// through, for only then does the disc come out with it.
func (f *flatWalk) checkHoleSaw(m pass) {
	found := f.pilot(m)
	if found < float64(m.Pilot)-same || found > float64(m.Pilot)+mostPilotSlack {
		f.failOp("start", "cut %q: the saw's pilot of Ø%s finds a hole of Ø%s; it wants one up to %s wider", m.name, mm(float64(m.Pilot)), mm(found), mm(mostPilotSlack))
		return
	}
	back, front, ok := f.work.faces()
	if !ok {
		return
	}
	near, far := front, back
	if m.pose.up() < 0 {
		near, far = back, front
	}
	if m.pose.up()*(far-m.to[2]) < same {
		f.failOp("cuts", "cut %q does not come through: the disc stays in the hole", m.name)
	}
	if deep := m.pose.up() * (near - m.to[2]); deep > float64(m.Depth)+same {
		f.failOp("reach", "cut %q takes %s into the saw; it is %s deep inside", m.name, mm(deep), mm(float64(m.Depth)))
	}
	f.checkRing(m, back, front)
}

// checkRing holds that a saw's teeth, and as much round them as they may wander, have metal all the way round: where they meet a gap they snatch.
func (f *flatWalk) checkRing(m pass, back, front float64) {
	ring := plane.Round(m.to[0], m.to[1], m.radius+sawWider())
	levels := f.work.levels()
	for i := 1; i < len(levels); i++ {
		z := (levels[i-1] + levels[i]) / 2
		if z < back || z > front {
			continue // faced off
		}
		gap := plane.Meet(ring, plane.Around(f.work.stock))
		for _, t := range f.work.taken {
			if gap || t.z0 >= z || z >= t.z1 {
				continue
			}
			if x, y, _ := t.centred(z); !t.centre || math.Hypot(x-m.to[0], y-m.to[1]) > centreNear {
				gap = plane.Meet(ring, t.at(z, 0))
			}
		}
		if gap {
			f.failOp("way in", "cut %q: the ring of teeth runs out of the metal", m.name)
			return
		}
	}
}

// sawTurns is what turns a hole saw, N mm: every row of teeth cuts a chip as wide as the ring, at its middle.
func (f *flatWalk) sawTurns(m pass, feed float64) float64 {
	rows := math.Max(1, math.Ceil(2*math.Pi*m.radius/toothRows))
	return rows * f.chip(float64(m.Kerf), math.Max(feed/rows, thinChip)) * (m.radius - float64(m.Kerf)/2)
}

// checkSawSpeed holds that a hole saw goes no faster than a drill of its size might, even at the machine's slowest: its teeth are thin, and stay in the cut.
func (f *flatWalk) checkSawSpeed(op plan.Operation, m pass) {
	most := fastest(f.part.Material, m.cutter)
	if v := 2 * math.Pi * m.radius * op.RPM / 1000; most > 0 && v > most*overSpeed {
		f.failOp("speed", "%s rev/min on a saw of Ø%s is %s m/min; %s is drilled at up to %s", mm(op.RPM), mm(2*m.radius), mm(math.Round(v*10)/10), f.part.Material.Name, mm(most))
	}
}
