package rules

// All is every rule, in the order in which they are told and asked.
func All() Set {
	s := Set{
		Orders: []Order{
			faceFirst, roughBeforeFinish, insideFirst, freeEndFirst, diameterBeforeEdge, threadLate, knurlEarly, weakenLate, stepsThenFile,
			partOffLast, drillBeforeBore, boreBeforeReam, finalFaceBeforeItsHoles, throughBeforeCounterbore, partedBeforeSecondFace,
			facesBeforeEdges, datumEdgesFirst, sawBeforeFile, holesBeforeNearEdge, lastCutAfterNearEdge, holesWhileSolid, edgesBrokenLast,
			facesBeforeHoles, markBeforeDrill, spotThrough, sinkAfterDrill, tapLast, ringAfterBore,
			seatFromPilot, holesBeforeSeat, leaningAfterSeat, seatLast, roundBeforeInterruptions, flatBeforeHole, crossingHoles,
		},
		Holdings: []Holding{
			gripExists, gripNotCut, capacity, colletSize, boreFinished, neverOnThread, packFinished, squareBar, grippedLength, stickOut, wallUnderGrip, wallOnMandrel, gripHolds,
			gluedArborLight, mandrelDrive, setOver, clampsPlaced, viceOnParallels, faceplateSeat, angleOnPlate, unbalanced, fourJawSides, coordinates, nearestCount, lyingRound, workFromFlatSide, verticalSlide,
		},
		Numbers: []Number{
			spotFirst, stockForFinish, separateRoughing, pilotChain, holeSaw, drillBoreOrReam, throughSkin, reamAllowance, partSpare, runOutExpected, holdingTimes,
			speedStep, lowestCap, operationFactors, pecking, barOverhang, oneWay, dialReads, mixedUnits, metalOn, coarseDial, trialCut, fileLeave,
			taperBySlide, screwInfeed, passDepth, pointDepth, partingTool, stockLength, toMeasuredSize,
			sameSetting, runOutShare, fewestSettings, holeFirst, helpersFirst, instrumentChoice, measureInTime, easeGrip, colletGrip, surfaceSpeedCap, clampGeometry, clampedToTable, backing,
			dividedRound, indexedRing, chordCheck, fromHeldDatum, blindTapped,
			mainAxisFirst, clockSwing, setOverByRise, sagitta, wrongRadius, swungRadius, gaugeSeat,
		},
		Cautions: []Caution{
			cautionAlways, cautionKey, cautionOffBalance, cautionParting, cautionFiling, cautionEmery, cautionSlender, cautionSheet, cautionBreakThrough, cautionHoleSaw, cautionSwarf, cautionSwung, cautionSlide, cautionGlue, cautionFluid, cautionBarBehind,
		},
	}
	return s.indexed()
}
