"use client";

import { useReader } from "@/app/_ui/preferences/reader";
import { useOnDevice } from "@/app/_ui/use-on-device";
import styles from "./awake-switch.module.css";
import { useAwake } from "./use-awake";

/** Whether the screen stays on at the table; shown where the device can do it. */
export function AwakeSwitch() {
	return useOnDevice() ? <Switch /> : null;
}

function Switch() {
	const { say } = useReader();
	const { awake, choose } = useAwake();
	if (awake === "absent") return null;
	const isOn = awake !== "off";
	return (
		<button
			type="button"
			role="switch"
			aria-checked={isOn}
			className={styles.switch}
			onClick={() => choose(!isOn)}
		>
			<span className={styles.knob} aria-hidden="true" />
			{say(
				awake === "refused" ? "coaching.awake.refused" : "coaching.awake.on",
			)}
		</button>
	);
}
