import {
	type CuePicture,
	LABEL_PX,
	LABEL_ROW_PX,
} from "@/lib/present/cue-picture";
import styles from "./cue-picture.module.css";

/** Outline, dimensions and what lies inside, in the raster's own pixels. `image` lies underneath. */
export function CueOverlay({
	picture,
	image,
}: {
	picture: CuePicture;
	/** Address of the raster, where nothing else draws it. */
	image?: string;
}) {
	const { frame, roomAbovePx, roomBelowPx, outline, span } = picture;
	const { widthPx, heightPx } = frame;
	const spanY = -LABEL_ROW_PX - 6;
	return (
		<svg
			className={styles.overlay}
			viewBox={`0 ${-roomAbovePx} ${widthPx} ${roomAbovePx + heightPx + roomBelowPx}`}
			fontSize={LABEL_PX}
			aria-hidden="true"
		>
			{image !== undefined && (
				<image
					href={image}
					width={widthPx}
					height={heightPx}
					preserveAspectRatio="none"
				/>
			)}
			<path className={styles.outline} d={outline} />
			{picture.hidden.map(({ part, ...box }) => (
				<g key={`${part}-${box.x}`}>
					<rect className={styles.hiddenGround} {...box} />
					<rect className={styles.hidden} {...box} />
				</g>
			))}
			{picture.meridians.map(({ y, text }) => (
				<g key={text}>
					<line className={styles.meridian} x1={0} x2={widthPx} y1={y} y2={y} />
					<text className={styles.onWood} x={6} y={y > 24 ? y - 5 : y + 16}>
						{text}
					</text>
				</g>
			))}
			<path
				className={styles.span}
				d={`M0.5 ${spanY - 6}v12M${widthPx - 0.5} ${spanY - 6}v12M0.5 ${spanY}H${widthPx - 0.5}`}
			/>
			<text
				className={styles.label}
				x={widthPx / 2}
				y={spanY + 5}
				textAnchor="middle"
			>
				{span}
			</text>
			{picture.ends.map(({ text, side }) => (
				<text
					key={side}
					className={styles.label}
					x={side === "left" ? 0 : widthPx}
					y={-6}
					textAnchor={side === "left" ? "start" : "end"}
				>
					{text}
				</text>
			))}
			{picture.marks.map(({ kind, text, x, fromY, toY, textX, textY }) => (
				<g key={`${text} ${x}`} data-kind={kind}>
					<line className={styles.leader} x1={x} x2={x} y1={fromY} y2={toY} />
					{kind === "balance" && (
						<path className={styles.balance} d={`M${x} ${fromY}l7 12h-14z`} />
					)}
					<text className={styles.label} x={textX} y={textY}>
						{text}
					</text>
				</g>
			))}
		</svg>
	);
}
