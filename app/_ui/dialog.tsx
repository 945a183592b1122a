"use client";

import { Dialog as Base } from "@base-ui/react/dialog";
import type { ReactElement, ReactNode } from "react";
import styles from "./dialog.module.css";

/**
 * A question that has to be answered first. Give `trigger` for one that opens itself, or `open` and
 * `onOpenChange` to hold it from outside. Close from inside with `DialogClose`; the first
 * button gets the focus, so put the harmless answer first.
 */
export function Dialog({
	trigger,
	open,
	onOpenChange,
	title,
	description,
	children,
}: {
	trigger?: ReactElement;
	open?: boolean;
	onOpenChange?: (open: boolean) => void;
	title: ReactNode;
	description?: ReactNode;
	children?: ReactNode;
}) {
	return (
		<Base.Root open={open} onOpenChange={(next) => onOpenChange?.(next)}>
			{trigger !== undefined && <Base.Trigger render={trigger} />}
			<Base.Portal>
				<Base.Backdrop className={styles.veil} />
				<Base.Popup className={styles.popup}>
					<Base.Title className={styles.title}>{title}</Base.Title>
					{description !== undefined && (
						<Base.Description className={styles.description}>
							{description}
						</Base.Description>
					)}
					{children}
				</Base.Popup>
			</Base.Portal>
		</Base.Root>
	);
}

/** Closes the dialog it stands in: `<DialogClose render={<Button>Keep it</Button>} />`. */
export const DialogClose = Base.Close;
