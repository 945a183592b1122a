import type { UnitSystem } from "@/lib/units/quantity";
import { chooseUnits } from "../preferences/actions";
import { UNITS_COOKIE } from "../preferences/choices";
import styles from "./shell.module.css";

const CHOICES: readonly { system: UnitSystem; label: string; name: string }[] =
	[
		{ system: "metric", label: "mm · g", name: "Millimetres and grams" },
		{ system: "trade", label: "in · oz", name: "Inches and ounces" },
	];

/** A plain form: it works before any script has run, and the server answers in the new units. */
export function UnitSwitch({ system }: { system: UnitSystem }) {
	return (
		<form action={chooseUnits}>
			<fieldset className={styles.units}>
				<legend className={styles.unseen}>Units</legend>
				{CHOICES.map((choice) => (
					<button
						key={choice.system}
						type="submit"
						name={UNITS_COOKIE}
						value={choice.system}
						aria-pressed={choice.system === system}
						title={choice.name}
					>
						{choice.label}
					</button>
				))}
			</fieldset>
		</form>
	);
}
