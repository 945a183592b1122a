import Link from "next/link";
import type { ComponentProps, ReactNode } from "react";
import styles from "./button.module.css";

/** `main` is the one next step of a screen; everything else is `plain` or `quiet`. */
export type ButtonLook = "main" | "plain" | "quiet" | "risky";

const classOf = (look: ButtonLook, wide: boolean, more = "") =>
	[styles.button, styles[look], wide ? styles.wide : "", more]
		.filter(Boolean)
		.join(" ");

interface Looks {
	look?: ButtonLook;
	/** Takes the whole width on a phone. */
	wide?: boolean;
}

export function Button({
	look = "plain",
	wide = false,
	busy = false,
	className,
	type = "button",
	children,
	onClick,
	...rest
}: ComponentProps<"button"> &
	Looks & {
		/** Work goes on: a second press does nothing, the button keeps its focus. Client parts only. */
		busy?: boolean;
		children: ReactNode;
	}) {
	return (
		<button
			{...rest}
			className={classOf(look, wide, className)}
			type={type}
			aria-disabled={busy || undefined}
			data-busy={busy || undefined}
			onClick={busy ? (event) => event.preventDefault() : onClick}
		>
			{children}
		</button>
	);
}

export function LinkButton({
	look = "plain",
	wide = false,
	className,
	...rest
}: ComponentProps<typeof Link> & Looks) {
	return <Link {...rest} className={classOf(look, wide, className)} />;
}
