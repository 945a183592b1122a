// What the check of literals has to find, and what it has to let pass. Rendered nowhere.

export function Shown({ name, isOn }: { name: string; isOn: boolean }) {
	if (name === "stays-as-it-is") throw new Error("a sentence for developers");
	const key = `players.${name}`;
	const label = isOn ? "Label seen" : key;
	const count = `${name} seen`;
	const title = "Seen";
	return (
		<p className="two words" title="Is seen" id={`${key} ${title}`}>
			<span data-testid="not a text">Is seen</span>
			{label} {`${name}: is seen`} {count} × {name}
		</p>
	);
}
