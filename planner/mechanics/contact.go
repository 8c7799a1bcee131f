package mechanics

func (g RingGrip) heldByRigidJaws(w wall) Distortion { return g.heldByEvenPads(w) }
func (g RingGrip) heldOnPlug(w wall) Distortion      { return g.heldByEvenPads(w) }
