import type { Reader } from "@/lib/words/reader";
import type { Header } from "@/lib/workshop/settings";

/** Where the workshop is reached; nothing where it set neither address nor contact. */
export function WorkshopContact({
	header,
	reader,
}: {
	header: Pick<Header, "lines" | "contact">;
	reader: Reader;
}) {
	if (header.contact === "" && header.lines.length === 0) return null;
	return (
		<address>
			{header.lines.map((line) => (
				<div key={line}>{line}</div>
			))}
			{header.contact !== "" && (
				<div>{reader.say("agreement.askAt", { contact: header.contact })}</div>
			)}
		</address>
	);
}
