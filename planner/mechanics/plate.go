package mechanics

import "math"

// PlateGrip is a rectangular plate with a big bore near one edge, held by jaws on its edges. The bore lies on the middle
// line of the width; the thin section is the metal between it and the edge across the length.
type PlateGrip struct {
	LengthMM       float64 // across the thin section, from edge to edge
	WidthMM        float64 // the other way
	ThicknessMM    float64
	BoreDiameterMM float64
	ThinMM         float64 // least metal between the bore and the near edge
	JawWidthMM     float64
	ForceThinN     float64 // on the thin edge and the edge opposite, each; 0 = no jaws there
	ForceSideN     float64 // on the other pair of edges, each
	ModulusMPa     float64
	Poisson        float64
	YieldMPa       float64 // 0 = not known
}

const (
	framePieces     = 120 // beams per half
	shearFactor     = 5. / 6
	deepestSection  = 1.2  // of the bore's radius: metal further out carries nothing
	thinnestSection = 0.04 // of the bore's radius, least checked
	thickestSection = 0.12 // most checked
	yieldReserveBar = 1.06 // predicted stress was up to 6 % low
)

// Distortion is the bore's out of round about its best circle, and the stress of the thin section.
//
// Formula: a closed frame of straight Timoshenko beams round the bore through the middle of the metal; at each angle the
// beam is as deep as the metal from bore to edge, 1.2 bore radii at most. Half the frame, on the symmetry line. Jaws load
// the joints whose radial line meets them. N, mm, MPa. Domain: thin section 0.04 to 0.12 of the bore's radius, even
// pressure, bore on the middle line, no slots. Error against finite elements: out of round 3.1/7.5/14.6 %, stress
// 8.9/12.4/17.4 % (median, 90 %, worst; mostly high). With jaws on all four edges the figure is a difference of two larger
// ones, so the worst of either pair alone and both is returned: nobody tightens a four-jaw evenly.
func (g PlateGrip) Distortion() (Distortion, error) {
	if err := g.check(); err != nil {
		return Distortion{}, err
	}
	worst := g.frame(g.ForceThinN, g.ForceSideN)
	if g.ForceThinN > 0 && g.ForceSideN > 0 {
		for _, alone := range [2]Distortion{g.frame(g.ForceThinN, 0), g.frame(0, g.ForceSideN)} {
			worst.ErrorMostMM = math.Max(worst.ErrorMostMM, alone.ErrorMostMM)
			worst.StressMostMPa = math.Max(worst.StressMostMPa, alone.StressMostMPa)
		}
		worst.ErrorJawPlaneMM = worst.ErrorMostMM
	}
	if !finite(worst.ErrorMostMM, worst.StressMostMPa) {
		return Distortion{Confidence: unsettled}, nil
	}
	worst.Confidence = g.confidence(worst)
	return worst, nil
}

func (g PlateGrip) check() error {
	bore := g.BoreDiameterMM
	return firstFault(
		positive("plate length (mm)", g.LengthMM), positive("plate width (mm)", g.WidthMM),
		positive("plate thickness (mm)", g.ThicknessMM), positive("bore diameter (mm)", bore),
		positive("thin section (mm)", g.ThinMM), positive("jaw width (mm)", g.JawWidthMM),
		limit{"bore diameter (mm)", bore, bore < g.WidthMM, "less than the plate's width"},
		limit{"thin section (mm)", g.ThinMM, g.ThinMM+bore < g.LengthMM, "small enough to leave metal beyond the bore"},
		notNegative("force on the thin edge (N)", g.ForceThinN), notNegative("force on the side edges (N)", g.ForceSideN),
		positive("modulus (MPa)", g.ModulusMPa), within("Poisson's ratio", g.Poisson, 0, 0.49),
		notNegative("yield (MPa)", g.YieldMPa),
	)
}

func (g PlateGrip) confidence(d Distortion) Confidence {
	share := g.ThinMM / (g.BoreDiameterMM / 2)
	switch {
	case g.YieldMPa > 0 && d.StressMostMPa*yieldReserveBar > g.YieldMPa:
		return none("the thin section would yield")
	case d.ErrorMostMM > largestError*g.BoreDiameterMM:
		return none("the bore gives more than 0.5 % of its diameter, where a linear figure comes out low")
	case share < thinnestSection || share > thickestSection:
		return rough(bandBound, "thin section outside 0.04 to 0.12 of the bore's radius, where the frame was checked")
	}
	return good(bandWebAndContact, "frame of beams round the bore; checked against finite elements (within 15 %)")
}

// edge is how far the plate's edge is from the bore's centre at an angle from the thin section.
func (g PlateGrip) edge(angle float64) float64 {
	near := g.BoreDiameterMM/2 + g.ThinMM
	cos, sin := math.Cos(angle), math.Sin(angle)
	along := math.Inf(1)
	switch {
	case cos > 0:
		along = near / cos
	case cos < 0:
		along = (near - g.LengthMM) / cos
	}
	return math.Min(along, g.WidthMM/2/math.Max(sin, math.SmallestNonzeroFloat64))
}

// depth is the radial depth of metal that carries at an angle.
func (g PlateGrip) depth(angle float64) float64 {
	r := g.BoreDiameterMM / 2
	return math.Min(g.edge(angle)-r, deepestSection*r)
}

// frame solves the half frame: x towards the thin section, y across; three unknowns a joint (x, y, turn).
func (g PlateGrip) frame(thin, side float64) Distortion {
	joints := framePieces + 1
	m, x := newBandMatrix(3*joints, 5), make([]float64, 3*joints)
	beams := make([]frameBeam, framePieces)
	for i := range beams {
		beams[i] = g.beamBetween(jointAngle(i), jointAngle(i+1))
		beams[i].addTo(m, 3*i)
	}
	g.load(x, thin, side)
	for _, row := range [5]int{1, 2, 3*framePieces + 1, 3*framePieces + 2, 3 * framePieces} {
		m.fix(row)
		x[row] = 0
	}
	m.solve(x)
	d := Distortion{StressMostMPa: beams[0].stress(x[:6], g.ThinMM, g.ThicknessMM)}
	d.ErrorMostMM = boreOutOfRound(x)
	d.ErrorJawPlaneMM = d.ErrorMostMM
	return d
}

func jointAngle(i int) float64 { return math.Pi * float64(i) / framePieces }

// jointShare is how much of a joint belongs to this half of the frame.
func jointShare(i int) float64 {
	if i == 0 || i == framePieces {
		return 0.5
	}
	return 1
}

// load spreads each jaw's even pressure over the joints, by the length of edge that lies nearest to each, seen from the
// bore's centre. On the symmetry line half a jaw belongs to this half of the frame.
func (g PlateGrip) load(x []float64, thin, side float64) {
	near := g.BoreDiameterMM/2 + g.ThinMM
	far := g.LengthMM - near
	g.spread(x, 0, -thin/2, func(a float64) float64 { return tangent(near, a) })
	g.spread(x, 0, thin/2, func(a float64) float64 { return tangent(far, math.Pi-a) })
	g.spread(x, 1, -side, func(a float64) float64 { return tangent(g.WidthMM/2, a-math.Pi/2) })
}

// tangent is where the line at an angle from the foot of a normal meets an edge at that distance; far off when it never does.
func tangent(distance, angle float64) float64 {
	switch {
	case angle >= math.Pi/2:
		return math.Inf(1)
	case angle <= -math.Pi/2:
		return math.Inf(-1)
	}
	return distance * math.Tan(angle)
}

// spread puts a jaw's force on the joints along one axis; along tells where on the edge an angle points.
func (g PlateGrip) spread(x []float64, axis int, force float64, along func(angle float64) float64) {
	half := g.JawWidthMM / 2
	onJaw := func(angle float64) float64 {
		angle = math.Min(math.Max(angle, 0), math.Pi)
		return math.Min(math.Max(along(angle), -half), half)
	}
	whole := math.Abs(onJaw(math.Pi) - onJaw(0))
	for i := range framePieces + 1 {
		a, step := jointAngle(i), math.Pi/framePieces/2
		x[3*i+axis] += force * math.Abs(onJaw(a+step)-onJaw(a-step)) / whole
	}
}

// boreOutOfRound is the peak-to-valley of the radial movement of the joints, less its best-fitting circle.
func boreOutOfRound(x []float64) float64 {
	joints := len(x) / 3
	var moves []float64
	mean, first := 0.0, 0.0
	for i := range joints {
		a := jointAngle(i)
		u := x[3*i]*math.Cos(a) + x[3*i+1]*math.Sin(a)
		weight := jointShare(i) / framePieces
		mean += weight * u
		first += 2 * weight * u * math.Cos(a)
		moves = append(moves, u)
	}
	low, high := math.Inf(1), math.Inf(-1)
	for i, u := range moves {
		u -= mean + first*math.Cos(jointAngle(i))
		low, high = math.Min(low, u), math.Max(high, u)
	}
	return high - low
}
