import { LANGUAGES, type LanguageId } from "@/lib/words/languages";
import type { Reader } from "@/lib/words/reader";
import { chooseLanguage } from "../preferences/actions";
import { LANGUAGE_COOKIE } from "../preferences/choices";
import styles from "./shell.module.css";

/** How much of a language's own name a narrow header has room for. */
const SHORT_LENGTH = 2;

/** A plain form, as the switch of units is. Each language names itself, for who cannot read the other. */
export function LanguageSwitch({ reader }: { reader: Reader }) {
	return (
		<form action={chooseLanguage}>
			<fieldset className={styles.choice}>
				<legend className={styles.unseen}>
					{reader.say("shell.language")}
				</legend>
				{(Object.entries(LANGUAGES) as [LanguageId, string][]).map(
					([language, name]) => (
						<button
							key={language}
							type="submit"
							name={LANGUAGE_COOKIE}
							value={language}
							lang={language}
							aria-pressed={language === reader.language}
						>
							{name.slice(0, SHORT_LENGTH)}
							<span className={styles.rest}>{name.slice(SHORT_LENGTH)}</span>
						</button>
					),
				)}
			</fieldset>
		</form>
	);
}
