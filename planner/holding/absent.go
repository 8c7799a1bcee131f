package holding

import (
	"cmp"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// absent says why the surface to hold by is not there; nothing when it is.
func (s Shop) absent(m Mount, done func(int) bool) string {
	why := s.absentGrip(m, done)
	if why == "" && m.Centre && (!s.mouthOpen(m, done) || !s.centred(m, done)) {
		return "there is nothing in its end for the centre to run in"
	}
	return why
}

// What has become of a grip.
const (
	cutOff     = "the piece is off its bar by then"
	onItsBar   = "the piece still hangs on its bar"
	notMade    = "not made yet"
	cutAway    = "cut away, or to be cut before it is held so"
	rawBehind  = "the end that sits behind it is still raw"
	notRunning = "what it is set by has not been turned yet"
)

func (s Shop) absentGrip(m Mount, done func(int) bool) string {
	parted := !s.Place.OnBar()
	if m.Machine == partspec.Bench {
		return "" // the bar can be marked there as well
	}
	if m.Between {
		for i, t := range s.Tasks {
			parted = parted || done(i) && (t.Process == plan.PartOff || t.Process == plan.SawOff)
		}
		return unless(parted, onItsBar)
	}
	made := m.Surface == "stock" || s.supplied(m.Surface)
	lost, seat := false, !s.rawEnd(m.Free.Other())
	for i, t := range s.Tasks {
		if !done(i) {
			continue
		}
		if t.Process == plan.PartOff || t.Process == plan.SawOff {
			parted = true
		}
		if t.MakesSurface(m.Surface) || t.Feature == m.Surface && t.Process == plan.TurnRough && !m.Inside {
			made = true
		}
		if t.Process == plan.Face && t.End == m.Free.Other() {
			seat = true
		}
		if m.RawUntil && t.Keep == nil && !t.Inside && len(t.Spots) == 0 && t.Touches(m.Z0, m.Z1) {
			lost = true
		}
	}
	switch {
	case m.Machine != "" && m.Surface == "stock" && !s.trued(done):
		return notRunning
	case s.bolted(m) && !s.faced(m.Free.Other(), done):
		return rawBehind
	case m.Surface == "stock" && s.Place.OnBar() && (m.Machine != "" || m.Free == s.Place.Free):
		return cmp.Or(unless(!parted, cutOff), unless(!lost, cutAway))
	case m.Step && !seat:
		return rawBehind // it stands out behind the place where the finished one will sit on the steps
	}
	return cmp.Or(unless(parted, onItsBar), unless(made, notMade), unless(!lost, cutAway))
}

func unless(held bool, why string) string {
	if held {
		return ""
	}
	return why
}

// rawEnd reports whether the stock stands out beyond the finished end.
func (s Shop) rawEnd(e partspec.End) bool {
	z0, z1 := s.Stock.Ends()
	if e == partspec.Right {
		return z1 > s.Length+1e-6
	}
	return z0 < -1e-6
}

func (s Shop) supplied(name string) bool {
	for _, b := range s.Blocks {
		if b.Name == name {
			return b.AsSupplied
		}
	}
	for _, h := range s.Holes {
		if h.Name == name {
			return h.AsSupplied
		}
	}
	return false
}
