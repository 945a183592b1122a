import { BODY_LENGTHS, type BodyLength } from "@/lib/player/populations";
import {
	BRIDGE_BEYOND_GRIP_SHARE,
	FOREARM_LINK_SHARE,
	HEAD_SHARES,
	HIP_HALF_BREADTH_SHARE,
	LEG_SHARES,
	NECK_SHARES,
	SEATED_HIP_ABOVE_SEAT_SHARE,
	UPPER_ARM_LINK_SHARE,
} from "./assumptions";

/** The linked figure the pose is solved with, mm: joint to joint, unlike the tape's landmarks. */
export interface Figure {
	readonly statureMm: number;
	readonly upperArmMm: number;
	readonly forearmMm: number;
	/** Elbow to the groove of the bridge hand. */
	readonly bridgeForearmMm: number;
	/** Middle of the shoulder line to either shoulder. */
	readonly halfGirdleMm: number;
	readonly trunkMm: number;
	readonly hipHeightMm: number;
	readonly hipAboveSeatMm: number;
	readonly halfHipMm: number;
	readonly thighMm: number;
	readonly shankMm: number;
	readonly handMm: number;
	/** Middle of the shoulder line up the spine to the base of the neck. */
	readonly girdleToNeckMm: number;
	/** Base of the neck to the pivot of the head, head upright. */
	readonly neckForwardMm: number;
	readonly neckUpMm: number;
	/** From the pivot of the head, in the head's own frame. */
	readonly chinForwardMm: number;
	readonly chinDownMm: number;
	readonly eyeForwardMm: number;
	readonly eyeUpMm: number;
	readonly headHeightMm: number;
}

/** Figure from body lengths in the order of BODY_LENGTHS. */
export function figureFrom(lengths: readonly number[]): Figure {
	const of = (name: BodyLength): number => {
		const value = lengths[BODY_LENGTHS.indexOf(name)];
		if (value === undefined) throw new RangeError(`${name} missing`);
		return value;
	};
	const statureMm = of("statureMm");
	const hipHeightMm = of("hipHeightMm");
	const shoulderMm = of("shoulderHeightMm");
	const chinMm = of("chinHeightMm");
	const headHeightMm = statureMm - chinMm;
	const chinDownMm = HEAD_SHARES.chinDown * headHeightMm;
	const girdleToNeckMm = NECK_SHARES.girdleToBase * statureMm;
	const forearmMm = FOREARM_LINK_SHARE * of("elbowToGripMm");
	return {
		statureMm,
		upperArmMm: UPPER_ARM_LINK_SHARE * of("shoulderToElbowMm"),
		forearmMm,
		bridgeForearmMm: forearmMm + BRIDGE_BEYOND_GRIP_SHARE * of("handLengthMm"),
		halfGirdleMm: of("shoulderBreadthMm") / 2,
		trunkMm: shoulderMm - hipHeightMm,
		hipHeightMm,
		hipAboveSeatMm: SEATED_HIP_ABOVE_SEAT_SHARE * statureMm,
		halfHipMm: HIP_HALF_BREADTH_SHARE * statureMm,
		thighMm: LEG_SHARES.thigh * hipHeightMm,
		shankMm: LEG_SHARES.shank * hipHeightMm,
		handMm: of("handLengthMm"),
		girdleToNeckMm,
		neckForwardMm: NECK_SHARES.forward * statureMm,
		neckUpMm: chinMm + chinDownMm - shoulderMm - girdleToNeckMm,
		chinForwardMm: HEAD_SHARES.chinForward * headHeightMm,
		chinDownMm,
		eyeForwardMm: HEAD_SHARES.eyeForward * headHeightMm,
		eyeUpMm: of("eyeHeightMm") - chinMm - chinDownMm,
		headHeightMm,
	};
}
