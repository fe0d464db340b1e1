CREATE TABLE `access_token` (
	`id` text PRIMARY KEY NOT NULL,
	`academy_id` text NOT NULL,
	`name` text NOT NULL,
	`token_hash` text NOT NULL,
	`who` text NOT NULL,
	`created_at` text NOT NULL,
	`last_used_at` text,
	`revoked_at` text,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `access_token_hash` ON `access_token` (`token_hash`);--> statement-breakpoint
CREATE TABLE `form_receipt` (
	`academy_id` text NOT NULL,
	`key` text NOT NULL,
	`kind` text NOT NULL,
	`outcome` text NOT NULL,
	`saved_at` text NOT NULL,
	PRIMARY KEY(`academy_id`, `key`),
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `import_source` (
	`academy_id` text NOT NULL,
	`fingerprint` text NOT NULL,
	`file_name` text NOT NULL,
	`answers` text NOT NULL,
	`updated_at` text NOT NULL,
	PRIMARY KEY(`academy_id`, `fingerprint`),
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `note_coding` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`academy_id` text NOT NULL,
	`phrase` text NOT NULL,
	`coding` text NOT NULL,
	`who` text NOT NULL,
	`recorded_at` text NOT NULL,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `note_coding_phrase` ON `note_coding` (`academy_id`,`phrase`,`id`);--> statement-breakpoint
CREATE TABLE `practice` (
	`id` text PRIMARY KEY NOT NULL,
	`student_id` text NOT NULL,
	`day` text NOT NULL,
	`assignment_id` text,
	`minutes` integer,
	`balls` integer,
	`felt` text,
	`source` text NOT NULL,
	`who` text NOT NULL,
	`recorded_at` text NOT NULL,
	`voided_at` text,
	`batch_id` text,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`assignment_id`) REFERENCES `drill_assignment`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`batch_id`) REFERENCES `import_batch`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `practice_student` ON `practice` (`student_id`,`day`);--> statement-breakpoint
CREATE TABLE `preference` (
	`academy_id` text NOT NULL,
	`viewer` text NOT NULL,
	`name` text NOT NULL,
	`value` text NOT NULL,
	PRIMARY KEY(`academy_id`, `viewer`, `name`),
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `read_back` (
	`id` text PRIMARY KEY NOT NULL,
	`student_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`reader` text NOT NULL,
	`who` text NOT NULL,
	`drawn_at` text NOT NULL,
	`finished_at` text,
	`dropped_at` text,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `read_back_student` ON `read_back` (`student_id`,`drawn_at`);--> statement-breakpoint
CREATE TABLE `read_back_item` (
	`read_back_id` text NOT NULL,
	`place` integer NOT NULL,
	`swing_id` integer NOT NULL,
	`film_reference` text NOT NULL,
	`typed` text,
	`reading_id` integer,
	PRIMARY KEY(`read_back_id`, `place`),
	FOREIGN KEY (`read_back_id`) REFERENCES `read_back`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`swing_id`) REFERENCES `swing`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`reading_id`) REFERENCES `reading`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `rebaseline_change` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`event_id` text NOT NULL,
	`before` text NOT NULL,
	`after` text NOT NULL,
	`who` text NOT NULL,
	`why` text NOT NULL,
	`changed_at` text NOT NULL,
	FOREIGN KEY (`event_id`) REFERENCES `event`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `rebaseline_change_event` ON `rebaseline_change` (`event_id`,`id`);--> statement-breakpoint
CREATE TABLE `record_change` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`academy_id` text NOT NULL,
	`kind` text NOT NULL,
	`student_id` text NOT NULL,
	`other_student_id` text,
	`session_id` text,
	`before` text NOT NULL,
	`after` text NOT NULL,
	`who` text NOT NULL,
	`why` text NOT NULL,
	`changed_at` text NOT NULL,
	`undone_at` text,
	`undone_by` text,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`other_student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`session_id`) REFERENCES `session`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `record_change_student` ON `record_change` (`student_id`,`id`);--> statement-breakpoint
CREATE INDEX `record_change_other` ON `record_change` (`other_student_id`,`id`);--> statement-breakpoint
DROP INDEX `import_batch_content`;--> statement-breakpoint
ALTER TABLE `import_batch` ADD `door` text DEFAULT 'page' NOT NULL;--> statement-breakpoint
ALTER TABLE `import_batch` ADD `undone_at` text;--> statement-breakpoint
ALTER TABLE `import_batch` ADD `undone_by` text;--> statement-breakpoint
CREATE UNIQUE INDEX `import_batch_content` ON `import_batch` (`academy_id`,`content_hash`) WHERE undone_at IS NULL;--> statement-breakpoint
ALTER TABLE `capture` ADD `batch_id` text REFERENCES import_batch(id);--> statement-breakpoint
ALTER TABLE `consent` ADD `batch_id` text REFERENCES import_batch(id);--> statement-breakpoint
ALTER TABLE `correction` ADD `kind` text DEFAULT 'change' NOT NULL;--> statement-breakpoint
ALTER TABLE `session` ADD `group_id` text;--> statement-breakpoint
ALTER TABLE `stated_capture_sd` ADD `batch_id` text REFERENCES import_batch(id);--> statement-breakpoint
ALTER TABLE `student` ADD `batch_id` text REFERENCES import_batch(id);--> statement-breakpoint
ALTER TABLE `student` ADD `merged_into` text REFERENCES student(id);--> statement-breakpoint
ALTER TABLE `swing` ADD `batch_id` text REFERENCES import_batch(id);--> statement-breakpoint
ALTER TABLE `draft` ADD `student_id` text REFERENCES student(id) ON DELETE cascade;--> statement-breakpoint
ALTER TABLE `draft` ADD `version` integer DEFAULT 1 NOT NULL;--> statement-breakpoint
ALTER TABLE `drill_assignment` ADD `who` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `drill_assignment` ADD `recorded_at` text;--> statement-breakpoint
ALTER TABLE `drill_assignment` ADD `end_why` text;--> statement-breakpoint
ALTER TABLE `drill_assignment` ADD `voided_at` text;--> statement-breakpoint
ALTER TABLE `drill_assignment` ADD `batch_id` text REFERENCES import_batch(id);--> statement-breakpoint
ALTER TABLE `event` ADD `end_day` text;--> statement-breakpoint
ALTER TABLE `event` ADD `place` text;--> statement-breakpoint
ALTER TABLE `event` ADD `who` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `event` ADD `recorded_at` text;--> statement-breakpoint
ALTER TABLE `event` ADD `voided_at` text;--> statement-breakpoint
ALTER TABLE `event` ADD `batch_id` text REFERENCES import_batch(id);