// A document in which components are rendered: what jsdom leaves out of it, and an empty page before each spec.
import { cleanup } from '@testing-library/react';

// jsdom draws nothing and has no modal dialogs: a dialog is open or closed, no more.
HTMLDialogElement.prototype.showModal = function showModal() {
  this.open = true;
};
HTMLDialogElement.prototype.close = function close() {
  this.open = false;
  this.dispatchEvent(new Event('close'));
};

afterEach(() => {
  cleanup();
  localStorage.clear();
});
