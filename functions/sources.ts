/** Titles of publications that several functions name as their source. */

export const DRESS_MAKING =
  "Dress Making, Trade Practical, National Instructional Media Institute (Directorate General of Training, Government of India)";
