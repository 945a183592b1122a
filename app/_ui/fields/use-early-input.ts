import { useLayoutEffect } from "react";

/**
 * Does again what was typed and chosen before the page's script ran. The fields hold it, but nobody was
 * told: the first word from elsewhere would put back what the page was made with. Each field hears of it
 * as if it were typed now. Fields must keep the browser from putting old text back by itself
 * (`autoComplete="off"`), or that would be taken for typed.
 */
export function useEarlyInput(): void {
	useLayoutEffect(() => {
		const early = [...document.querySelectorAll("main :is(input,textarea)")]
			.map(repeater)
			.filter((repeat) => repeat !== null);
		const chosen = [...document.querySelectorAll("main select")]
			.map(selectRepeater)
			.filter((repeat) => repeat !== null);
		// Past this rendering: what it puts into the fields comes first.
		queueMicrotask(() => {
			for (const repeat of [...early, ...chosen]) repeat();
		});
	}, []);
}

const CHECKED = ["radio", "checkbox"];
const TYPED = ["text", "search", "date", "number", "tel", "email", "textarea"];

/** How to do again what was done to a field; null where nothing was, and for fields that see to it themselves. */
function repeater(field: Element): (() => void) | null {
	if (field.getAttribute("role") === "combobox") return null;
	if (field instanceof HTMLInputElement && CHECKED.includes(field.type))
		return checkRepeater(field);
	if (
		!(
			field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement
		) ||
		!TYPED.includes(field.type) ||
		field.value === field.defaultValue
	)
		return null;
	const { value: typed, defaultValue } = field;
	return () => {
		// Through the field's own property, so that what follows counts as news.
		field.value = defaultValue;
		plainly(field, typed);
		field.dispatchEvent(new Event("input", { bubbles: true }));
	};
}

function checkRepeater(field: HTMLInputElement): (() => void) | null {
	const { checked, defaultChecked, type } = field;
	// Of a group, the one that was chosen says it all.
	if (checked === defaultChecked || (type === "radio" && !checked)) return null;
	return () => {
		field.checked = defaultChecked;
		field.click();
	};
}

function selectRepeater(field: Element): (() => void) | null {
	if (!(field instanceof HTMLSelectElement) || field.multiple) return null;
	const made = [...field.options].find((one) => one.defaultSelected);
	if (made === undefined || field.value === made.value) return null;
	const { value: chosen } = field;
	return () => {
		field.value = chosen;
		field.dispatchEvent(new Event("change", { bubbles: true }));
	};
}

/** Past the property that the form's library has put over the field's own. */
function plainly(
	field: HTMLInputElement | HTMLTextAreaElement,
	text: string,
): void {
	const of =
		field instanceof HTMLInputElement
			? HTMLInputElement.prototype
			: HTMLTextAreaElement.prototype;
	Object.getOwnPropertyDescriptor(of, "value")?.set?.call(field, text);
}
