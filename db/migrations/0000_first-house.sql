CREATE TABLE `academy` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`owner_name` text NOT NULL,
	`zone` text NOT NULL,
	`locale` text NOT NULL,
	`kind` text NOT NULL,
	`fixed_today` text,
	`season_start` text NOT NULL,
	`created_at` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `capture` (
	`session_id` text NOT NULL,
	`view` text NOT NULL,
	`placement` text NOT NULL,
	`placement_label` text,
	`squareness` text NOT NULL,
	`off_by` real,
	`set_aside_reason` text,
	`film_reference` text,
	PRIMARY KEY(`session_id`, `view`),
	FOREIGN KEY (`session_id`) REFERENCES `session`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `consent` (
	`id` text PRIMARY KEY NOT NULL,
	`student_id` text NOT NULL,
	`kind` text NOT NULL,
	`given_by` text NOT NULL,
	`from_day` text NOT NULL,
	`until_day` text,
	`withdrawn_on` text,
	`recorded_at` text NOT NULL,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `correction` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`reading_id` integer NOT NULL,
	`value` real,
	`typed` text NOT NULL,
	`who` text NOT NULL,
	`why` text NOT NULL,
	`corrected_at` text NOT NULL,
	FOREIGN KEY (`reading_id`) REFERENCES `reading`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `correction_reading` ON `correction` (`reading_id`,`id`);--> statement-breakpoint
CREATE TABLE `height` (
	`student_id` text NOT NULL,
	`day` text NOT NULL,
	`cm` real NOT NULL,
	PRIMARY KEY(`student_id`, `day`),
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `import_batch` (
	`id` text PRIMARY KEY NOT NULL,
	`academy_id` text NOT NULL,
	`file_name` text NOT NULL,
	`content_hash` text NOT NULL,
	`form` text NOT NULL,
	`rows` integer NOT NULL,
	`readings` integer NOT NULL,
	`answers` text NOT NULL,
	`created_at` text NOT NULL,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `import_batch_content` ON `import_batch` (`academy_id`,`content_hash`);--> statement-breakpoint
CREATE TABLE `reading` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`student_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`session_id` text NOT NULL,
	`swing_id` integer NOT NULL,
	`reader` text NOT NULL,
	`reread` integer NOT NULL,
	`value` real,
	`typed` text NOT NULL,
	`unit` text NOT NULL,
	`sign_rule` text NOT NULL,
	`entered_at` text NOT NULL,
	`batch_id` text,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`session_id`) REFERENCES `session`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`swing_id`) REFERENCES `swing`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`batch_id`) REFERENCES `import_batch`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `reading_once` ON `reading` (`swing_id`,`fundamental_id`,`reader`,`reread`);--> statement-breakpoint
CREATE INDEX `reading_track` ON `reading` (`student_id`,`fundamental_id`,`session_id`,`reread`,`reader`,`swing_id`,`value`);--> statement-breakpoint
CREATE TABLE `session` (
	`id` text PRIMARY KEY NOT NULL,
	`student_id` text NOT NULL,
	`day` text NOT NULL,
	`sequence` integer NOT NULL,
	`club_group` text NOT NULL,
	`club` text,
	`reader` text NOT NULL,
	`circumstance` text NOT NULL,
	`aid` text,
	`stance_width_cm` real,
	`days_since_practice` integer,
	`marks` text DEFAULT '' NOT NULL,
	`note` text,
	`solid` integer,
	`balls` integer,
	`set_aside_reason` text,
	`batch_id` text,
	`created_at` text NOT NULL,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`batch_id`) REFERENCES `import_batch`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `session_day` ON `session` (`student_id`,`club_group`,`day`,`sequence`);--> statement-breakpoint
CREATE TABLE `stated_capture_sd` (
	`session_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`sd` real NOT NULL,
	PRIMARY KEY(`session_id`, `fundamental_id`),
	FOREIGN KEY (`session_id`) REFERENCES `session`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `student` (
	`id` text PRIMARY KEY NOT NULL,
	`academy_id` text NOT NULL,
	`alias` text NOT NULL,
	`birth_year` integer,
	`hand` text NOT NULL,
	`zone` text NOT NULL,
	`clubs` text NOT NULL,
	`revision` integer DEFAULT 0 NOT NULL,
	`created_at` text NOT NULL,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `student_alias` ON `student` (`academy_id`,`alias`);--> statement-breakpoint
CREATE TABLE `swing` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`session_id` text NOT NULL,
	`number` integer NOT NULL,
	`note` text,
	FOREIGN KEY (`session_id`) REFERENCES `session`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `swing_number` ON `swing` (`session_id`,`number`);--> statement-breakpoint
CREATE TABLE `analysis` (
	`academy_id` text NOT NULL,
	`student_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`club_group` text NOT NULL,
	`as_of` text NOT NULL,
	`policy_version` text NOT NULL,
	`noise_model` text NOT NULL,
	`data_revision` integer NOT NULL,
	`summary` text NOT NULL,
	`body` text NOT NULL,
	PRIMARY KEY(`student_id`, `fundamental_id`, `club_group`, `as_of`, `policy_version`),
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `analysis_academy` ON `analysis` (`academy_id`,`as_of`);--> statement-breakpoint
CREATE TABLE `draft` (
	`id` text PRIMARY KEY NOT NULL,
	`academy_id` text NOT NULL,
	`kind` text NOT NULL,
	`body` text NOT NULL,
	`updated_at` text NOT NULL,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `drill` (
	`id` text PRIMARY KEY NOT NULL,
	`academy_id` text NOT NULL,
	`name` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`how` text NOT NULL,
	`cautions` text NOT NULL,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `drill_assignment` (
	`id` text PRIMARY KEY NOT NULL,
	`student_id` text NOT NULL,
	`drill_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`start_day` text NOT NULL,
	`end_day` text,
	`dose` text NOT NULL,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`drill_id`) REFERENCES `drill`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `event` (
	`id` text PRIMARY KEY NOT NULL,
	`student_id` text NOT NULL,
	`kind` text NOT NULL,
	`day` text NOT NULL,
	`note` text NOT NULL,
	`rebaselines` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `goal_band` (
	`id` text PRIMARY KEY NOT NULL,
	`academy_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`club_group` text NOT NULL,
	`scope` text NOT NULL,
	`age_from` integer,
	`age_to` integer,
	`student_id` text,
	`low` real,
	`high` real,
	`from_day` text NOT NULL,
	`reason` text NOT NULL,
	`created_at` text NOT NULL,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `look_noise` (
	`student_id` text NOT NULL,
	`session_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`noise_model_name` text NOT NULL,
	PRIMARY KEY(`session_id`, `fundamental_id`),
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`session_id`) REFERENCES `session`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `look_noise_student` ON `look_noise` (`student_id`);--> statement-breakpoint
CREATE TABLE `noise_model` (
	`academy_id` text NOT NULL,
	`pool` text NOT NULL,
	`number` integer NOT NULL,
	`name` text NOT NULL,
	`learned_up_to` text NOT NULL,
	`pool_sessions` integer NOT NULL,
	`fitted_at` text NOT NULL,
	`body` text NOT NULL,
	PRIMARY KEY(`academy_id`, `pool`, `number`),
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `noise_model_name` ON `noise_model` (`academy_id`,`name`);--> statement-breakpoint
CREATE TABLE `own_fundamental` (
	`academy_id` text NOT NULL,
	`id` text NOT NULL,
	`definition` text NOT NULL,
	`created_at` text NOT NULL,
	PRIMARY KEY(`academy_id`, `id`),
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `roster_list` (
	`academy_id` text NOT NULL,
	`as_of` text NOT NULL,
	`policy_version` text NOT NULL,
	`input_digest` text NOT NULL,
	`body` text NOT NULL,
	PRIMARY KEY(`academy_id`, `as_of`, `policy_version`),
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `seen` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`academy_id` text NOT NULL,
	`viewer` text NOT NULL,
	`seen_at` text NOT NULL,
	`as_of` text NOT NULL,
	`body` text NOT NULL,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `seen_viewer` ON `seen` (`academy_id`,`viewer`,`id`);