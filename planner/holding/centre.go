package holding

import "catchplate/partspec"

// widestMouth is the widest bore that a tailstock centre sits in. Common practice, no source: a small pipe centre.
const widestMouth = 20.0

// withCentre adds a tailstock centre in the mouth of a hole, or in a centre hole, at the free end, where the workshop has a tailstock. The hole must be there
// first, and what lies in it, or on its face, cannot be worked while the centre is in it (rule B-28).
func (s Shop) withCentre(mounts []Mount) []Mount {
	if !s.owns(partspec.Tailstock) {
		return nil
	}
	var centred []Mount
	for _, m := range mounts {
		if m.Between || m.Inside || m.Glue != NoGlue || m.Plug {
			continue
		}
		if r := s.faceHole(m.Free); s.Centred[m.Free] || r > 0 && 2*r <= widestMouth {
			m.Centre, m.Minutes = true, m.Minutes+centreMinutes
			if !s.Centred[m.Free] {
				m.Mouth = 2 * r
			}
			centred = append(centred, m)
		}
	}
	return centred
}

// centreMinutes is the time to bring the tailstock up. Ours, no source.
const centreMinutes = 1.0

func (s Shop) owns(k partspec.HoldingKind) bool {
	for _, h := range s.Shop.Holdings {
		if h.Kind == k {
			return true
		}
	}
	return false
}

// mouthOpen reports whether a hole opens at the free end now.
func (s Shop) mouthOpen(m Mount, done func(int) bool) bool {
	b := s.body(done)
	z0, z1 := b.Ends()
	if m.Free == partspec.Right {
		return b.Inner.Greatest(z1-faceLook, z1) > 0
	}
	return b.Inner.Greatest(z0, z0+faceLook) > 0
}

// faceLook is how deep into a face its hole is looked for.
const faceLook = 0.01
