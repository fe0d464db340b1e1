CREATE TABLE `asking` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`student_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`club_group` text NOT NULL,
	`state` text NOT NULL,
	`day` text NOT NULL,
	`who` text NOT NULL,
	`plan` text,
	`recorded_at` text NOT NULL,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `asking_track` ON `asking` (`student_id`,`fundamental_id`,`club_group`,`id`);--> statement-breakpoint
CREATE TABLE `club_regrouping` (
	`academy_id` text NOT NULL,
	`number` integer NOT NULL,
	`kind` text NOT NULL,
	`from_groups` text NOT NULL,
	`to_groups` text NOT NULL,
	`sessions` integer NOT NULL,
	`day` text NOT NULL,
	`who` text NOT NULL,
	`why` text NOT NULL,
	`grouping` text NOT NULL,
	`recorded_at` text NOT NULL,
	PRIMARY KEY(`academy_id`, `number`),
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
DROP INDEX `session_day`;--> statement-breakpoint
ALTER TABLE `session` ADD `said_club_group` text DEFAULT '' NOT NULL;--> statement-breakpoint
UPDATE `session` SET `said_club_group` = `club_group`;--> statement-breakpoint
CREATE UNIQUE INDEX `session_day` ON `session` (`student_id`,`said_club_group`,`day`,`sequence`);--> statement-breakpoint
PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_look_noise` (
	`student_id` text NOT NULL,
	`session_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`club_group` text NOT NULL,
	`noise_model_name` text NOT NULL,
	PRIMARY KEY(`session_id`, `fundamental_id`, `club_group`),
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`session_id`) REFERENCES `session`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
INSERT INTO `__new_look_noise`("student_id", "session_id", "fundamental_id", "club_group", "noise_model_name") SELECT `look_noise`.`student_id`, `session_id`, `fundamental_id`, `club_group`, `noise_model_name` FROM `look_noise` JOIN `session` ON `session`.`id` = `look_noise`.`session_id`;--> statement-breakpoint
DROP TABLE `look_noise`;--> statement-breakpoint
ALTER TABLE `__new_look_noise` RENAME TO `look_noise`;--> statement-breakpoint
PRAGMA foreign_keys=ON;--> statement-breakpoint
CREATE INDEX `look_noise_student` ON `look_noise` (`student_id`);--> statement-breakpoint
DELETE FROM `analysis`;--> statement-breakpoint
DELETE FROM `roster_list`;
