package partspec

var filletShape = shapeOf{attrs: []attr{need("edge", kindWord), need("radius", kindSize), may("note", kindText)}}

// fillet builds a round in a corner, or on an edge.
func (s *shaper) fillet(e *entry) Feature {
	f := &Fillet{FeatureHead: s.head(e), Radius: s.size(e, "radius", useEdge)}
	r, ok := s.rim(e)
	if !ok || e.broken {
		return nil
	}
	f.Edge = r.Edge
	s.rims[e.name] = r
	return f
}
