import { Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import type { SheetRow } from "@/lib/present/sheet-rows";
import type { SheetStyles } from "./sheet-pdf-styles";

interface PartProps {
	readonly styles: SheetStyles;
	readonly title: string;
}

/** A part that stays on one page, or a table that breaks between its lines. */
export function Part({
	styles,
	title,
	children,
	wrap = true,
	isOnNewPage = false,
}: PartProps & {
	children: ReactNode;
	isOnNewPage?: boolean;
	/** May it begin on one page and end on the next. */
	wrap?: boolean;
}) {
	return (
		<View style={styles.part} wrap={wrap} break={isOnNewPage}>
			<Text style={styles.partTitle}>{title}</Text>
			{children}
		</View>
	);
}

/** The title stays with the first entry: never alone at the foot of a page. */
function ListedPart({
	styles,
	title,
	lead,
	entries,
}: PartProps & { lead?: string; entries: readonly ReactNode[] }) {
	const [first, ...others] = entries;
	return (
		<View style={styles.part}>
			<View wrap={false}>
				<Text style={styles.partTitle}>{title}</Text>
				{lead !== undefined && <Text style={styles.above}>{lead}</Text>}
				{first}
			</View>
			{others}
		</View>
	);
}

export const RowsPart = ({
	rows,
	isWide = false,
	...part
}: PartProps & {
	rows: readonly SheetRow[];
	/** A sentence above the rows. */
	lead?: string;
	/** Over both columns, the note beside the value instead of below it. */
	isWide?: boolean;
}) => {
	const { styles } = part;
	return (
		<ListedPart
			{...part}
			entries={rows.map(({ label, value, note = "" }) => (
				<View key={label} style={styles.row} wrap={false}>
					<Text style={isWide ? styles.wideLabel : styles.rowLabel}>
						{label}
					</Text>
					<View style={isWide ? styles.wideWords : styles.rowValue}>
						<Text style={isWide ? styles.wideValue : styles.bold}>{value}</Text>
						{note !== "" && (
							<Text style={isWide ? styles.wideNote : styles.note}>{note}</Text>
						)}
					</View>
				</View>
			))}
		/>
	);
};

export const ItemsPart = ({
	lines,
	last,
	...part
}: PartProps & {
	lines: readonly string[];
	/** A sentence below the list. */
	last?: string;
}) => (
	<ListedPart
		{...part}
		entries={[
			...lines.map((line, i) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: printed once, never reordered; two may read the same
				<View key={`${i}-${line}`} style={part.styles.item} wrap={false}>
					<Text style={part.styles.bullet}>•</Text>
					<Text style={part.styles.itemWords}>{line}</Text>
				</View>
			)),
			last !== undefined && <Text key="last">{last}</Text>,
		]}
	/>
);

export interface Column<Row> {
	readonly label: string;
	readonly share: number;
	readonly isNumber?: boolean;
	/** Left out: an empty field to be written in. */
	readonly text?: (row: Row) => string;
}

/** A table ruled line by line, its headings again on the next page. */
export function Table<Row>({
	styles,
	columns,
	rows,
	roomPt = 0,
}: {
	styles: SheetStyles;
	columns: readonly Column<Row>[];
	rows: readonly Row[];
	/** Least height of a line, where it is written in by hand. */
	roomPt?: number;
}) {
	const whole = columns.reduce((sum, { share }) => sum + share, 0);
	const cell = ({ share, isNumber }: Column<Row>) => [
		styles.cell,
		{ width: `${(100 * share) / whole}%` },
		...(isNumber ? [styles.right] : []),
	];
	return (
		<View>
			<View style={styles.line}>
				{columns.map((column) => (
					<Text key={column.label} style={[...cell(column), styles.bold]}>
						{column.label}
					</Text>
				))}
			</View>
			{rows.map((row, i) => (
				<View
					// biome-ignore lint/suspicious/noArrayIndexKey: printed once, never reordered
					key={i}
					style={[styles.line, { minHeight: roomPt }]}
					wrap={false}
				>
					{columns.map((column) => (
						<Text key={column.label} style={cell(column)}>
							{column.text?.(row) ?? ""}
						</Text>
					))}
				</View>
			))}
		</View>
	);
}
