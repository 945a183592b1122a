import type { UnitSystem } from "@/lib/units/quantity";
import type { Reader } from "@/lib/words/reader";
import { chooseUnits } from "../preferences/actions";
import { UNITS_COOKIE } from "../preferences/choices";
import styles from "./shell.module.css";

const CHOICES: readonly { system: UnitSystem; label: string }[] = [
	{ system: "metric", label: "mm · g" },
	{ system: "trade", label: "in · oz" },
];

/** A plain form: it works before any script has run, and the server answers in the new units. */
export function UnitSwitch({ reader }: { reader: Reader }) {
	return (
		<form action={chooseUnits}>
			<fieldset className={styles.choice}>
				<legend className={styles.unseen}>{reader.say("shell.units")}</legend>
				{CHOICES.map((choice) => (
					<button
						key={choice.system}
						type="submit"
						name={UNITS_COOKIE}
						value={choice.system}
						aria-pressed={choice.system === reader.system}
						title={reader.say(`shell.${choice.system}`)}
					>
						{choice.label}
					</button>
				))}
			</fieldset>
		</form>
	);
}
